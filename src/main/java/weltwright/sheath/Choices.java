package weltwright.sheath;

import weltwright.knife.Knife;
import weltwright.measure.LengthField;
import weltwright.measure.NumberField;
import weltwright.trouble.Trouble;

/** Refuses what no leatherworker could make, naming the choice to change. */
final class Choices {
    private Choices() {}

    static void check(Knife knife, SheathSpec spec) {
        if (!knife.outline().sampled(1).polygon().isValid()) {
            throw new Trouble(
                    "The outline of the knife crosses itself.",
                    "Move its points so that it runs round the knife once.");
        }
        knife(knife);
        if (knife.doubleEdged() && spec.kind() == SheathKind.FOLDED) {
            throw new Trouble(
                    "A double-edged knife would cut a body that is folded round its second edge.",
                    "Choose a sheath of two panels, with a welt all round.");
        }
        leather(spec.leather(), spec.welt());
        hardware(spec.hardware());
        Bounds.STITCH_MARGIN.checkedMm(spec.stitching().marginMm());
        Bounds.PITCH.checkedMm(spec.stitching().pitchMm());
        Bounds.BACK_STITCHES.checked(spec.stitching().backStitches());
        Bounds.THROAT_DEPTH.checkedMm(spec.throat().depthMm());
        Bounds.EASE.checkedMm(spec.easeMm());
        Bounds.BELT_WIDTH.checkedMm(spec.belt().beltWidthMm());
        Bounds.BELT_THICKNESS.checkedMm(spec.belt().beltThicknessMm());
        Bounds.TILT.checked(Math.toDegrees(spec.carry().tiltRad()));
        spec.depth()
                .handleMm()
                .ifPresent(LengthField.of("depth of the handle in the sheath", 0, Depth.mostMm(knife))::checkedMm);
        Bounds.BELT_STRAP_WIDTH.checkedMm(spec.belt().strap().widthMm());
        spec.belt().strap().thicknessMm().ifPresent(Bounds.BELT_STRAP_LEATHER::checkedMm);
        spec.strap().ifPresent(strap -> {
            Bounds.STRAP_ALLOWANCE.checkedMm(strap.allowanceMm());
            Bounds.STRAP_WIDTH.checkedMm(strap.leather().widthMm());
            strap.leather().thicknessMm().ifPresent(Bounds.STRAP_LEATHER::checkedMm);
        });
        if (spec.drain().diameterMm() != 0 && !spec.drain().eyelet()) {
            LengthField.of("diameter of the drain hole", 1, 10)
                    .checkedMm(spec.drain().diameterMm());
        }
    }

    private static void knife(Knife knife) {
        Bounds.SPINE_THICKNESS.checkedMm(knife.spineThicknessMm());
        Bounds.HANDLE_THICKNESS.checkedMm(knife.handleThicknessMm());
        Bounds.HANDLE_SQUARENESS.checked(knife.shaping().handleExponent());
        LengthField.of("thickness of the blade behind the edge", 0, knife.spineThicknessMm())
                .checkedMm(knife.shaping().edgeThicknessMm());
        LengthField.of("length of the blade", 25, 600).checkedMm(knife.bladeLengthMm());
        LengthField.of("length of the handle", 10, 600).checkedMm(handleLength(knife));
        LengthField.of("height of the blade at the heel", 3, 150).checkedMm(heightAtHeel(knife));
        if (knife.shaping().grind().hasHeight()) {
            LengthField.of("height of the grind", 0.5, 150)
                    .checkedMm(knife.shaping().grind().heightMm());
        }
    }

    private static void hardware(HardwareList list) {
        for (Fastener fastener : list.fasteners()) {
            boolean possible = fastener.postMm() > 0
                    && fastener.capMm() > fastener.postMm()
                    && fastener.gripFromMm() >= 0
                    && fastener.gripToMm() > fastener.gripFromMm();
            if (!possible) {
                throw new Trouble(
                        "In the list of hardware the sizes of the " + fastener.name() + " cannot be.",
                        "Its cap must be wider than its post, and its grip go from thin to thick.");
            }
        }
        for (Ring ring : list.rings()) {
            if (!(ring.insideMm() > 0 && ring.wireMm() > 0)) {
                throw new Trouble(
                        "In the list of hardware the sizes of the " + ring.name() + " cannot be.",
                        "Measure one, and put its sizes there.");
            }
        }
    }

    private static void leather(Leather leather, WeltChoice welt) {
        Bounds.LEATHER_THICKNESS.checkedMm(leather.thicknessMm());
        Bounds.NEUTRAL_FACTOR.checked(leather.neutralFactor());
        Bounds.FORMING_GIVE.checkedMm(leather.giveMm());
        Bounds.FORMING_SHRINK.checked(100 * leather.formingShrink());
        welt.layers().ifPresent(Bounds.WELT_LAYERS::checked);
        Bounds.WELT_INNER_MARGIN.checkedMm(welt.innerMarginMm());
        welt.leathersMm().forEach(Bounds.LEATHER_THICKNESS::checkedMm);
        NumberField.count("number of leathers for the welt", 0, 6)
                .checked(welt.leathersMm().size());
    }

    private static double heightAtHeel(Knife knife) {
        return knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
    }

    private static double handleLength(Knife knife) {
        return knife.landmarks().heel().x() - knife.landmarks().butt().x();
    }
}
