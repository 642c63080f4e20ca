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
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.units.LengthField;

/** The options for the sheath. */
final class SheathOptions {
    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description = "folded: one piece folded round the spine, with a welt along the edge. panels: a face and a"
                    + " back, with a welt all round but for the throat. panels_edge_welt: a face and a back, with a welt"
                    + " along the edge alone. Default: ${DEFAULT-VALUE}.")
    private @Nullable SheathKind kind;

    @Option(
            names = "--hand",
            paramLabel = "HAND",
            description = "The hand that draws: right or left. Default: ${DEFAULT-VALUE}.")
    private @Nullable DrawHand hand;

    @Option(
            names = "--edge",
            paramLabel = "WAY",
            description =
                    "Where the knife's edge looks when the sheath is worn: forward or back. Default: ${DEFAULT-VALUE}.")
    private CarryPosition.@Nullable Edge edge;

    @Option(
            names = "--tilt",
            paramLabel = "DEGREES",
            description = "How far the handle leans forward; less than 0 leans it back. Default: ${DEFAULT-VALUE}.")
    private @Nullable String tilt;

    @Option(
            names = "--leather",
            paramLabel = "LENGTH",
            description = "Thickness of the leather, such as 3mm, 1/8in or 7/8oz. Default: ${DEFAULT-VALUE}.")
    private @Nullable String leather;

    @Option(
            names = "--bulge",
            paramLabel = "WHERE",
            description = "Which of two panels goes round the knife where it is thicker than the welt. shared: both"
                    + " alike. face: the face alone, so that the back lies flat. Default: ${DEFAULT-VALUE}.")
    private Leather.@Nullable Bulge bulge;

    @Option(
            names = "--forming-shrink",
            paramLabel = "PERCENT",
            description = "By how much the leather draws together as it dries, formed wet over the knife: from a test"
                    + " piece. Default: ${DEFAULT-VALUE}, for firm leather.")
    private @Nullable String formingShrink;

    @Option(
            names = "--forming-give",
            paramLabel = "LENGTH",
            description =
                    "By how much leather that was formed to the knife gives where a wider part of it passes: 1.5 to"
                            + " 2.5 mm (common practice). The program judges by it how the sheath holds. Default: ${DEFAULT-VALUE}.")
    private @Nullable String formingGive;

    @Option(
            names = "--welt-layers",
            paramLabel = "NUMBER",
            description = "Layers of leather in the welt, the strip between the layers that keeps the edge off the"
                    + " stitches. auto: as many as make it at least as thick as the blade. Default: ${DEFAULT-VALUE}.")
    private @Nullable String weltLayers;

    @Option(
            names = "--welt-leather",
            paramLabel = "LENGTH",
            description =
                    "Thickness of leather at hand for the welt; may be given several times, and the welt is laid of"
                            + " those that come nearest to the blade's thickness. own: the sheath's own leather. Default: ${DEFAULT-VALUE}.")
    private @Nullable List<String> weltLeathers;

    /** Values of {@code --welt-cut}. */
    enum WeltCut {
        WHOLE,
        IN_TWO
    }

    @Option(
            names = "--welt-cut",
            paramLabel = "HOW",
            description = "whole: each layer of the welt in one piece. in_two: in two that meet end to end, which saves"
                    + " leather. Default: ${DEFAULT-VALUE}.")
    private @Nullable WeltCut weltCut;

    @Option(
            names = "--stitch-margin",
            paramLabel = "LENGTH",
            description = "From the stitch row to the outer edge. Default: ${DEFAULT-VALUE}.")
    private @Nullable String stitchMargin;

    @Option(
            names = "--welt-margin",
            paramLabel = "LENGTH",
            description = "Of welt between the knife and the stitch row. Default: ${DEFAULT-VALUE}.")
    private @Nullable String weltMargin;

    @Option(
            names = "--ease",
            paramLabel = "LENGTH",
            description = "Air round the knife, so that it slides: less holds firmer. Default: ${DEFAULT-VALUE}.")
    private @Nullable String ease;

    @Option(
            names = "--pitch",
            paramLabel = "LENGTH",
            description =
                    "From stitch to stitch, as your pricking iron has it, such as 4mm, or in stitches per inch, such"
                            + " as 6spi. Default: ${DEFAULT-VALUE}.")
    private @Nullable String pitch;

    @Option(
            names = "--back-stitches",
            paramLabel = "NUMBER",
            description = "How many stitches are sewn back over at either end of a seam. Default: ${DEFAULT-VALUE}.")
    private @Nullable String backStitches;

    @Option(
            names = "--neutral-factor",
            paramLabel = "NUMBER",
            description = "Where in the leather's thickness a bend neither stretches nor shrinks: 0 at its inside, 1 at"
                    + " its outside. Default: ${DEFAULT-VALUE}.")
    private @Nullable String neutralFactor;

    @Option(
            names = "--throat",
            paramLabel = "SHAPE",
            description =
                    "How the open end is cut. curved: hollowed in the middle of the face. straight."
                            + " slanted_to_edge, slanted_to_spine: straight, and lower on that side. Default: ${DEFAULT-VALUE}.")
    private Throat.@Nullable Shape throat;

    @Option(
            names = "--throat-depth",
            paramLabel = "LENGTH",
            description = "How far down the hollow or the slant reaches. Default: ${DEFAULT-VALUE}.")
    private @Nullable String throatDepth;

    @Option(
            names = "--belt-loop",
            paramLabel = "STYLE",
            description =
                    "tail: a tail of the back, folded down and sewn. riveted_strap, sewn_strap: a strap with round"
                            + " ends, folded over the belt and fastened to the back. hanging_ring: a strap from which the sheath"
                            + " hangs by a ring. Default: ${DEFAULT-VALUE}.")
    private BeltAttachment.@Nullable Style beltLoop;

    @Option(
            names = "--belt-width",
            paramLabel = "LENGTH",
            description = "Of the belt to wear it on. Default: ${DEFAULT-VALUE}.")
    private @Nullable String beltWidth;

    @Option(names = "--belt-thickness", paramLabel = "LENGTH", description = "Of that belt. Default: ${DEFAULT-VALUE}.")
    private @Nullable String beltThickness;

    @Option(
            names = "--belt-strap-width",
            paramLabel = "LENGTH",
            description =
                    "Width of the strap over the belt, for the belt loops that have one. Default: ${DEFAULT-VALUE}.")
    private @Nullable String beltStrapWidth;

    @Option(
            names = "--belt-strap-leather",
            paramLabel = "LENGTH",
            description =
                    "Thickness of the leather that the strap over the belt is cut from. own: the sheath's own leather."
                            + " Default: ${DEFAULT-VALUE}.")
    private @Nullable String beltStrapLeather;

    @Option(
            names = "--strap",
            paramLabel = "LENGTH",
            description = "A strap with a snap round the handle, its middle so far above the throat; none: no strap."
                    + " Default: ${DEFAULT-VALUE}.")
    private @Nullable String strap;

    @Option(
            names = "--strap-opens",
            paramLabel = "SIDE",
            description = "The side, seen from the face with the tip down, on which the strap's loose end lies: left or"
                    + " right. Default: ${DEFAULT-VALUE}.")
    private HandleStrap.@Nullable Side strapOpens;

    @Option(
            names = "--strap-allowance",
            paramLabel = "LENGTH",
            description =
                    "How much longer the strap is than leather pulled tight round the handle. Default: ${DEFAULT-VALUE}.")
    private @Nullable String strapAllowance;

    @Option(
            names = "--strap-width",
            paramLabel = "LENGTH",
            description = "Width of the strap round the handle. Default: ${DEFAULT-VALUE}.")
    private @Nullable String strapWidth;

    @Option(
            names = "--strap-leather",
            paramLabel = "LENGTH",
            description = "Thickness of the leather that the strap round the handle is cut from. own: the sheath's own"
                    + " leather. Default: ${DEFAULT-VALUE}.")
    private @Nullable String strapLeather;

    @Option(
            names = "--handle-depth",
            paramLabel = "LENGTH",
            description = "How much of the handle goes into the sheath past the throat, its open end. 0 seats the knife"
                    + " to its guard or its handle's front. auto: to the guard; without one, a third of the handle, which"
                    + " friction then holds. Default: ${DEFAULT-VALUE}.")
    private @Nullable String handleDepth;

    @Option(
            names = "--guard-opening",
            paramLabel = "HOW",
            description =
                    "none: a sheath deeper than to the guard is refused. open_side: it is left unsewn from the throat"
                            + " down past the guard on each side where that stands out, and wants a strap round the handle."
                            + " Default: ${DEFAULT-VALUE}.")
    private GuardOpening guardOpening;

    @Option(
            names = "--drain-hole",
            paramLabel = "LENGTH",
            description = "Width of the hole at the tip that lets water out; 0 for none. Default: ${DEFAULT-VALUE}.")
    private @Nullable String drainHole;

    /** Values of {@code --drain-lining}. */
    enum Lining {
        NONE,
        EYELET
    }

    @Option(
            names = "--drain-lining",
            paramLabel = "WHAT",
            description =
                    "eyelet: the drain hole is lined with an eyelet from the list of hardware, which then gives it"
                            + " its size. none. Default: ${DEFAULT-VALUE}.")
    private @Nullable Lining drainLining;

    @Option(
            names = "--hardware",
            paramLabel = "FILE",
            description =
                    "Your own list of rivets, snaps, eyelets and rings, as the command hardware writes it; usual: that"
                            + " of usual sizes. The job keeps it. Default: ${DEFAULT-VALUE}.")
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
                        mm(throatDepth, JobFields.THROAT_DEPTH, spec.throat().depthMm())),
                applyTo(spec.belt()),
                applyTo(spec.strap()),
                mm(ease, JobFields.EASE, spec.easeMm()),
                applyTo(spec.depth()),
                applyTo(spec.drain()),
                applyTo(spec.hardware()));
    }

    private CarryPosition applyTo(CarryPosition carry) {
        return new CarryPosition(
                orElse(hand, carry.hand()),
                orElse(edge, carry.edge()),
                tilt == null ? carry.tiltRad() : Math.toRadians(JobFields.TILT.read(tilt)));
    }

    private Leather applyTo(Leather spec) {
        return new Leather(
                mm(leather, JobFields.LEATHER_THICKNESS, spec.thicknessMm()),
                neutralFactor == null ? spec.neutralFactor() : JobFields.NEUTRAL_FACTOR.read(neutralFactor),
                formingShrink == null ? spec.formingShrink() : JobFields.FORMING_SHRINK.read(formingShrink) / 100,
                orElse(bulge, spec.bulge()),
                mm(formingGive, JobFields.FORMING_GIVE, spec.giveMm()));
    }

    private WeltSpec applyTo(WeltSpec welt) {
        return new WeltSpec(
                weltLayers == null ? welt.layers() : layers(weltLayers),
                mm(weltMargin, JobFields.WELT_INNER_MARGIN, welt.innerMarginMm()),
                weltLeathers == null ? welt.leathersMm() : leathers(weltLeathers),
                weltCut == null ? welt.inTwo() : weltCut == WeltCut.IN_TWO);
    }

    private Stitching applyTo(Stitching stitching) {
        return new Stitching(
                mm(stitchMargin, JobFields.STITCH_MARGIN, stitching.marginMm()),
                pitch == null ? stitching.pitchMm() : JobFields.readPitchMm(pitch),
                backStitches == null ? stitching.backStitches() : JobFields.BACK_STITCHES.readCount(backStitches));
    }

    private BeltAttachment applyTo(BeltAttachment belt) {
        return new BeltAttachment(
                orElse(beltLoop, belt.style()),
                mm(beltWidth, JobFields.BELT_WIDTH, belt.beltWidthMm()),
                mm(beltThickness, JobFields.BELT_THICKNESS, belt.beltThicknessMm()),
                new StrapLeather(
                        mm(
                                beltStrapWidth,
                                JobFields.BELT_STRAP_WIDTH,
                                belt.strap().widthMm()),
                        leather(
                                beltStrapLeather,
                                JobFields.BELT_STRAP_LEATHER,
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
                mm(strap, JobFields.STRAP_HEIGHT, from.aboveThroatMm()),
                orElse(strapOpens, from.opens()),
                mm(strapAllowance, JobFields.STRAP_ALLOWANCE, from.allowanceMm()),
                new StrapLeather(
                        mm(strapWidth, JobFields.STRAP_WIDTH, from.leather().widthMm()),
                        leather(
                                strapLeather,
                                JobFields.STRAP_LEATHER,
                                from.leather().thicknessMm()))));
    }

    private InsertionDepth applyTo(InsertionDepth depth) {
        InsertionDepth opened = depth.withGuard(orElse(guardOpening, depth.guard()));
        if (handleDepth == null) {
            return opened;
        }
        return opened.withHandleMm(
                handleDepth.strip().equalsIgnoreCase("auto")
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(JobFields.HANDLE_DEPTH.readMm(handleDepth)));
    }

    private DrainHole applyTo(DrainHole drain) {
        return new DrainHole(
                mm(drainHole, JobFields.DRAIN_HOLE, drain.diameterMm()),
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
                : typed.stream().map(JobFields.LEATHER_THICKNESS::readMm).toList();
    }

    private static OptionalInt layers(String typed) {
        return typed.strip().equalsIgnoreCase("auto")
                ? OptionalInt.empty()
                : OptionalInt.of(JobFields.WELT_LAYERS.readCount(typed));
    }
}
