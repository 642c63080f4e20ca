package weltwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.job.HardwareFile;
import weltwright.job.JobFields;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.units.LengthField;

/** The options for the sheath. */
final class SheathOptions {
    @Option(names = "--kind", paramLabel = "KIND")
    private @Nullable SheathKind kind;

    @Option(names = "--hand", paramLabel = "HAND")
    private @Nullable DrawHand hand;

    @Option(names = "--edge", paramLabel = "WAY")
    private CarryPosition.@Nullable Edge edge;

    @Option(names = "--tilt", paramLabel = "DEGREES")
    private @Nullable String tilt;

    @Option(names = "--leather", paramLabel = "LENGTH")
    private @Nullable String leather;

    @Option(names = "--bulge", paramLabel = "WHERE")
    private Leather.@Nullable Bulge bulge;

    @Option(names = "--forming-shrink", paramLabel = "PERCENT")
    private @Nullable String formingShrink;

    @Option(names = "--forming-give", paramLabel = "LENGTH")
    private @Nullable String formingGive;

    @Option(names = "--welt-layers", paramLabel = "NUMBER")
    private @Nullable String weltLayers;

    @Option(names = "--welt-leather", paramLabel = "LENGTH")
    private @Nullable List<String> weltLeathers;

    /** Values of {@code --welt-cut}. */
    enum WeltCut {
        WHOLE,
        IN_TWO
    }

    @Option(names = "--welt-cut", paramLabel = "HOW")
    private @Nullable WeltCut weltCut;

    @Option(names = "--stitch-margin", paramLabel = "LENGTH")
    private @Nullable String stitchMargin;

    @Option(names = "--welt-margin", paramLabel = "LENGTH")
    private @Nullable String weltMargin;

    @Option(names = "--ease", paramLabel = "LENGTH")
    private @Nullable String ease;

    @Option(names = "--pitch", paramLabel = "LENGTH")
    private @Nullable String pitch;

    @Option(names = "--back-stitches", paramLabel = "NUMBER")
    private @Nullable String backStitches;

    @Option(names = "--thread", paramLabel = "LENGTH")
    private @Nullable String thread;

    @Option(names = "--neutral-factor", paramLabel = "NUMBER")
    private @Nullable String neutralFactor;

    @Option(names = "--throat", paramLabel = "SHAPE")
    private Throat.@Nullable Shape throat;

    @Option(names = "--throat-depth", paramLabel = "LENGTH")
    private @Nullable String throatDepth;

    @Option(names = "--belt-loop", paramLabel = "STYLE")
    private BeltAttachment.@Nullable Style beltLoop;

    @Option(names = "--belt-width", paramLabel = "LENGTH")
    private @Nullable String beltWidth;

    @Option(names = "--belt-thickness", paramLabel = "LENGTH")
    private @Nullable String beltThickness;

    @Option(names = "--belt-strap-width", paramLabel = "LENGTH")
    private @Nullable String beltStrapWidth;

    @Option(names = "--belt-strap-leather", paramLabel = "LENGTH")
    private @Nullable String beltStrapLeather;

    @Option(names = "--strap", paramLabel = "LENGTH")
    private @Nullable String strap;

    @Option(names = "--strap-opens", paramLabel = "SIDE")
    private HandleStrap.@Nullable Side strapOpens;

    @Option(names = "--strap-allowance", paramLabel = "LENGTH")
    private @Nullable String strapAllowance;

    @Option(names = "--strap-width", paramLabel = "LENGTH")
    private @Nullable String strapWidth;

    @Option(names = "--strap-leather", paramLabel = "LENGTH")
    private @Nullable String strapLeather;

    @Option(names = "--handle-depth", paramLabel = "LENGTH")
    private @Nullable String handleDepth;

    @Option(names = "--guard-opening", paramLabel = "HOW")
    private GuardOpening guardOpening;

    @Option(names = "--drain-hole", paramLabel = "LENGTH")
    private @Nullable String drainHole;

    /** Values of {@code --drain-lining}. */
    enum Lining {
        NONE,
        EYELET
    }

    @Option(names = "--drain-lining", paramLabel = "WHAT")
    private @Nullable Lining drainLining;

    @Option(names = "--hardware", paramLabel = "FILE")
    private @Nullable String hardware;

    /** Returns the choices with the given options applied. */
    SheathSpec applyTo(SheathSpec spec) {
        return new SheathSpec(
                orElse(kind, spec.kind()),
                applyTo(spec.carry()),
                applyTo(spec.leather()),
                applyTo(spec.welt()),
                applyTo(spec.stitching()),
                new Throat(
                        orElse(throat, spec.throat().shape()),
                        mm(throatDepth, SpecFields.THROAT_DEPTH, spec.throat().depthMm())),
                applyTo(spec.belt()),
                applyTo(spec.strap()),
                mm(ease, SpecFields.EASE, spec.easeMm()),
                applyTo(spec.depth()),
                applyTo(spec.drain()),
                applyTo(spec.hardware()));
    }

    private CarryPosition applyTo(CarryPosition carry) {
        return new CarryPosition(
                orElse(hand, carry.hand()),
                orElse(edge, carry.edge()),
                tilt == null ? carry.tiltRad() : Math.toRadians(SpecFields.TILT.read(tilt)));
    }

    private Leather applyTo(Leather spec) {
        return new Leather(
                mm(leather, SpecFields.LEATHER_THICKNESS, spec.thicknessMm()),
                neutralFactor == null ? spec.neutralFactor() : SpecFields.NEUTRAL_FACTOR.read(neutralFactor),
                formingShrink == null ? spec.formingShrink() : SpecFields.FORMING_SHRINK.read(formingShrink) / 100,
                orElse(bulge, spec.bulge()),
                mm(formingGive, SpecFields.FORMING_GIVE, spec.giveMm()));
    }

    private WeltSpec applyTo(WeltSpec welt) {
        return new WeltSpec(
                weltLayers == null ? welt.layers() : layers(weltLayers),
                mm(weltMargin, SpecFields.WELT_INNER_MARGIN, welt.innerMarginMm()),
                weltLeathers == null ? welt.leathersMm() : leathers(weltLeathers),
                weltCut == null ? welt.inTwo() : weltCut == WeltCut.IN_TWO);
    }

    private Stitching applyTo(Stitching stitching) {
        return new Stitching(
                mm(stitchMargin, SpecFields.STITCH_MARGIN, stitching.marginMm()),
                pitch == null ? stitching.pitchMm() : JobFields.readPitchMm(pitch),
                backStitches == null ? stitching.backStitches() : SpecFields.BACK_STITCHES.readCount(backStitches),
                thread == null ? stitching.threadMm() : autoOrMm(thread, SpecFields.THREAD));
    }

    private BeltAttachment applyTo(BeltAttachment belt) {
        return new BeltAttachment(
                orElse(beltLoop, belt.style()),
                mm(beltWidth, SpecFields.BELT_WIDTH, belt.beltWidthMm()),
                mm(beltThickness, SpecFields.BELT_THICKNESS, belt.beltThicknessMm()),
                new StrapLeather(
                        mm(
                                beltStrapWidth,
                                SpecFields.BELT_STRAP_WIDTH,
                                belt.strap().widthMm()),
                        leather(
                                beltStrapLeather,
                                SpecFields.BELT_STRAP_LEATHER,
                                belt.strap().thicknessMm())));
    }

    private Optional<HandleStrap> applyTo(Optional<HandleStrap> before) {
        if (strap != null && strap.strip().equalsIgnoreCase("none")) {
            return Optional.empty();
        }
        boolean given = Stream.of(strap, strapOpens, strapAllowance, strapWidth, strapLeather)
                .anyMatch(Objects::nonNull);
        if (before.isEmpty() && !given) {
            return before;
        }
        HandleStrap from = before.orElse(HandleStrap.USUAL);
        return Optional.of(new HandleStrap(
                mm(strap, SpecFields.STRAP_HEIGHT, from.aboveThroatMm()),
                orElse(strapOpens, from.opens()),
                mm(strapAllowance, SpecFields.STRAP_ALLOWANCE, from.allowanceMm()),
                new StrapLeather(
                        mm(strapWidth, SpecFields.STRAP_WIDTH, from.leather().widthMm()),
                        leather(
                                strapLeather,
                                SpecFields.STRAP_LEATHER,
                                from.leather().thicknessMm()))));
    }

    private InsertionDepth applyTo(InsertionDepth depth) {
        InsertionDepth opened = depth.withGuard(orElse(guardOpening, depth.guard()));
        return handleDepth == null ? opened : opened.withHandleMm(autoOrMm(handleDepth, SpecFields.HANDLE_DEPTH));
    }

    private static OptionalDouble autoOrMm(String text, LengthField field) {
        return text.strip().equalsIgnoreCase("auto") ? OptionalDouble.empty() : OptionalDouble.of(field.readMm(text));
    }

    private DrainHole applyTo(DrainHole drain) {
        return new DrainHole(
                mm(drainHole, SpecFields.DRAIN_HOLE, drain.diameterMm()),
                drainLining == null ? drain.eyelet() : drainLining == Lining.EYELET);
    }

    private HardwareList applyTo(HardwareList list) {
        if (hardware == null) {
            return list;
        }
        return hardware.strip().equalsIgnoreCase("usual") ? HardwareList.USUAL : HardwareFile.read(Path.of(hardware));
    }

    private static <T> T orElse(@Nullable T given, T fallback) {
        return given == null ? fallback : given;
    }

    private static double mm(@Nullable String typed, LengthField field, double fallback) {
        return typed == null ? fallback : field.readMm(typed);
    }

    private static OptionalDouble leather(@Nullable String typed, LengthField field, OptionalDouble fallback) {
        if (typed == null) {
            return fallback;
        }
        return typed.strip().equalsIgnoreCase("own") ? OptionalDouble.empty() : OptionalDouble.of(field.readMm(typed));
    }

    private static List<Double> leathers(List<String> typed) {
        return typed.size() == 1 && typed.get(0).strip().equalsIgnoreCase("own")
                ? List.of()
                : typed.stream().map(SpecFields.LEATHER_THICKNESS::readMm).toList();
    }

    private static OptionalInt layers(String typed) {
        return typed.strip().equalsIgnoreCase("auto")
                ? OptionalInt.empty()
                : OptionalInt.of(SpecFields.WELT_LAYERS.readCount(typed));
    }
}
