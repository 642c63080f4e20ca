package weltwright.app.cli;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import weltwright.job.Job;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.output.cutter.CutterBed;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathSpec;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.Length;
import weltwright.units.PrintScale;

/**
 * What holds for a new job where an option is left out, as one would type it: for the help alone. An option that is
 * left out has no value of its own, since it leaves what a job holds.
 */
final class DefaultValues implements IDefaultValueProvider {
    private static final String NONE = "none";
    private static final String OWN = "own";
    private static final String AUTO = "auto";
    private static final String FIND = "find";

    private final Map<String, String> values = new HashMap<>();

    DefaultValues() {
        Job job = Job.begin(LocalDate.EPOCH);
        put(job.settings());
        put(job.shaping());
        put(job.spec());
        put(job.spec().strap().orElse(HandleStrap.USUAL));
        put(CutterBed.USUAL);
        values.put(
                "--strap",
                job.spec().strap().map(strap -> length(strap.aboveThroatMm())).orElse(NONE));
        values.put("--guard", FIND);
    }

    @Override
    public @Nullable String defaultValue(ArgSpec argument) {
        return argument instanceof OptionSpec option ? values.get(option.longestName()) : null;
    }

    private void put(TraceSettings settings) {
        values.put("--handle-thickness", length(settings.handleThicknessMm()));
        values.put("--spine-thickness", length(settings.spineThicknessMm()));
        values.put("--tip-drop", length(settings.tipDropMm()));
        values.put("--ground", settings.ground().words());
        PrintScale sheet = settings.sheetScale();
        double bar = LengthPair.SHEET_BARS.nominalMm();
        values.put("--sheet-bars", length(bar * sheet.x()) + "," + length(bar * sheet.y()));
    }

    private void put(CrossSectionShape shaping) {
        values.put("--edge-thickness", length(shaping.edgeThicknessMm()));
        values.put("--grind", word(shaping.grind().kind()));
        values.put(
                "--grind-height",
                length(shaping.grind().with(Grind.Kind.PARTIAL_FLAT).heightMm()));
        values.put("--handle-squareness", number(shaping.handleExponent()));
    }

    private void put(SheathSpec spec) {
        values.put("--kind", word(spec.kind()));
        values.put("--hand", word(spec.carry().hand()));
        values.put("--edge", word(spec.carry().edge()));
        values.put("--tilt", number(Math.toDegrees(spec.carry().tiltRad())));
        values.put("--leather", length(spec.leather().thicknessMm()));
        values.put("--neutral-factor", number(spec.leather().neutralFactor()));
        values.put("--forming-shrink", number(100 * spec.leather().formingShrink()));
        values.put("--forming-give", length(spec.leather().giveMm()));
        values.put("--bulge", word(spec.leather().bulge()));
        values.put(
                "--welt-layers",
                spec.welt().layers().isPresent()
                        ? Integer.toString(spec.welt().layers().getAsInt())
                        : AUTO);
        values.put("--welt-margin", length(spec.welt().innerMarginMm()));
        values.put(
                "--welt-leather",
                spec.welt().leathersMm().stream()
                        .findFirst()
                        .map(DefaultValues::length)
                        .orElse(OWN));
        values.put(
                "--welt-cut", word(spec.welt().inTwo() ? SheathOptions.WeltCut.IN_TWO : SheathOptions.WeltCut.WHOLE));
        values.put("--stitch-margin", length(spec.stitching().marginMm()));
        values.put("--pitch", length(spec.stitching().pitchMm()));
        values.put("--back-stitches", Integer.toString(spec.stitching().backStitches()));
        values.put("--throat", word(spec.throat().shape()));
        values.put("--throat-depth", length(spec.throat().depthMm()));
        values.put("--belt-loop", word(spec.belt().style()));
        values.put("--belt-width", length(spec.belt().beltWidthMm()));
        values.put("--belt-thickness", length(spec.belt().beltThicknessMm()));
        values.put("--belt-strap-width", length(spec.belt().strap().widthMm()));
        values.put("--belt-strap-leather", lengthOr(spec.belt().strap().thicknessMm(), OWN));
        values.put("--ease", length(spec.easeMm()));
        values.put("--handle-depth", lengthOr(spec.depth().handleMm(), AUTO));
        values.put("--guard-opening", word(spec.depth().guard()));
        values.put("--drain-hole", length(spec.drain().diameterMm()));
        values.put(
                "--drain-lining",
                word(spec.drain().eyelet() ? SheathOptions.Lining.EYELET : SheathOptions.Lining.NONE));
        values.put("--hardware", spec.hardware().equals(HardwareList.USUAL) ? "usual" : "");
    }

    private void put(HandleStrap strap) {
        values.put("--strap-opens", word(strap.opens()));
        values.put("--strap-allowance", length(strap.allowanceMm()));
        values.put("--strap-width", length(strap.leather().widthMm()));
        values.put("--strap-leather", lengthOr(strap.leather().thicknessMm(), OWN));
    }

    private void put(CutterBed bed) {
        values.put("--bed-width", length(bed.widthMm()));
        values.put("--bed-height", length(bed.heightMm()));
        values.put("--side-up", word(bed.sideUp()));
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String lengthOr(OptionalDouble mm, String otherwise) {
        return mm.isPresent() ? length(mm.getAsDouble()) : otherwise;
    }

    /** In inches where hundredths of a mm do not tell it: 3.175 mm are 1/8in. */
    private static String length(double mm) {
        boolean hundredths = Math.abs(100 * mm - Math.rint(100 * mm)) < 1e-9;
        Length length = new Length(mm);
        return hundredths
                ? length.inMillimetres().replace(" mm", "mm")
                : length.inInches().replace(" in", "in");
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }
}
