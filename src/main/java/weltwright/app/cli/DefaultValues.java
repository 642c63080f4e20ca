package weltwright.app.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
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
 * The values of a new job for each option, as a user would type them, for {@code ${DEFAULT-VALUE}} in the help. They
 * are not applied: an option that is not given leaves the value of the job.
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
                job.spec().strap().map(strap -> format(strap.aboveThroatMm())).orElse(NONE));
        values.put("--guard", FIND);
    }

    @Override
    public @Nullable String defaultValue(ArgSpec argument) {
        return argument instanceof OptionSpec option ? values.get(option.longestName()) : null;
    }

    private void put(TraceSettings settings) {
        values.put("--handle-thickness", format(settings.assumingUsual().measuredHandleMm()));
        values.put("--spine-thickness", format(settings.assumingUsual().measuredSpineMm()));
        values.put("--tip-drop", format(settings.tipDropMm()));
        values.put("--ground", settings.ground().words());
        PrintScale sheet = settings.sheetScale();
        double bar = LengthPair.SHEET_BARS.nominalMm();
        values.put("--handle-section", lowerCaseName(settings.handleSection()));
        values.put("--sheet-bars", format(bar * sheet.x()) + "," + format(bar * sheet.y()));
    }

    private void put(CrossSectionShape shape) {
        values.put("--edge-thickness", format(shape.edgeThicknessMm()));
        values.put("--grind", lowerCaseName(shape.grind().kind()));
        values.put(
                "--grind-height",
                format(shape.grind().with(Grind.Kind.PARTIAL_FLAT).heightMm()));
        values.put("--handle-squareness", formatNumber(shape.handleExponent()));
    }

    private void put(SheathSpec spec) {
        values.put("--kind", lowerCaseName(spec.kind()));
        values.put("--hand", lowerCaseName(spec.carry().hand()));
        values.put("--edge", lowerCaseName(spec.carry().edge()));
        values.put("--tilt", formatNumber(Math.toDegrees(spec.carry().tiltRad())));
        values.put("--leather", format(spec.leather().thicknessMm()));
        values.put("--neutral-factor", formatNumber(spec.leather().neutralFactor()));
        values.put("--forming-shrink", formatNumber(100 * spec.leather().formingShrink()));
        values.put("--forming-give", format(spec.leather().giveMm()));
        values.put("--bulge", lowerCaseName(spec.leather().bulge()));
        values.put(
                "--welt-layers",
                spec.welt().layers().isPresent()
                        ? Integer.toString(spec.welt().layers().getAsInt())
                        : AUTO);
        values.put("--welt-margin", format(spec.welt().innerMarginMm()));
        values.put(
                "--welt-leather",
                spec.welt().leathersMm().stream()
                        .findFirst()
                        .map(DefaultValues::format)
                        .orElse(OWN));
        values.put(
                "--welt-cut",
                lowerCaseName(spec.welt().inTwo() ? SheathOptions.WeltCut.IN_TWO : SheathOptions.WeltCut.WHOLE));
        values.put("--stitch-margin", format(spec.stitching().marginMm()));
        values.put("--pitch", format(spec.stitching().pitchMm()));
        values.put("--back-stitches", Integer.toString(spec.stitching().backStitches()));
        values.put("--thread", formatOr(spec.stitching().threadMm(), AUTO));
        values.put("--throat", lowerCaseName(spec.throat().shape()));
        values.put("--throat-depth", format(spec.throat().depthMm()));
        values.put("--belt-loop", lowerCaseName(spec.belt().style()));
        values.put("--belt-width", format(spec.belt().beltWidthMm()));
        values.put("--belt-thickness", format(spec.belt().beltThicknessMm()));
        values.put("--belt-strap-width", format(spec.belt().strap().widthMm()));
        values.put("--belt-strap-leather", formatOr(spec.belt().strap().thicknessMm(), OWN));
        values.put("--ease", format(spec.easeMm()));
        values.put("--handle-depth", formatOr(spec.depth().handleMm(), AUTO));
        values.put("--guard-opening", lowerCaseName(spec.depth().guard()));
        values.put("--drain-hole", format(spec.drain().diameterMm()));
        values.put(
                "--drain-lining",
                lowerCaseName(spec.drain().eyelet() ? SheathOptions.Lining.EYELET : SheathOptions.Lining.NONE));
        values.put("--hardware", spec.hardware().equals(HardwareList.USUAL) ? "usual" : "");
    }

    private void put(HandleStrap strap) {
        values.put("--strap-opens", lowerCaseName(strap.opens()));
        values.put("--strap-allowance", format(strap.allowanceMm()));
        values.put("--strap-width", format(strap.leather().widthMm()));
        values.put("--strap-leather", formatOr(strap.leather().thicknessMm(), OWN));
    }

    private void put(CutterBed bed) {
        values.put("--bed-width", format(bed.widthMm()));
        values.put("--bed-height", format(bed.heightMm()));
        values.put("--side-up", lowerCaseName(bed.sideUp()));
    }

    private static String lowerCaseName(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String formatOr(OptionalDouble mm, String fallback) {
        return mm.isPresent() ? format(mm.getAsDouble()) : fallback;
    }

    /** Formats a length in mm; in inches where it is no multiple of 0.01 mm, such as 1/8in for 3.175 mm. */
    private static String format(double mm) {
        boolean hundredths = Math.abs(100 * mm - Math.rint(100 * mm)) < 1e-9;
        Length length = new Length(mm);
        return hundredths
                ? BigDecimal.valueOf(mm)
                                .setScale(2, RoundingMode.HALF_UP)
                                .stripTrailingZeros()
                                .toPlainString() + "mm"
                : length.inInches().replace(" in", "in");
    }

    private static String formatNumber(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }
}
