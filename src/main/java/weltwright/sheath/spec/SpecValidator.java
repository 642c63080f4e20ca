package weltwright.sheath.spec;

import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
import weltwright.units.LengthField;
import weltwright.units.NumberField;

/**
 * Checks a knife and the maker's choices against bounds. Throws {@link UserFacingException} that names the choice to
 * change.
 */
public final class SpecValidator {
    private SpecValidator() {}

    /** Throws where no sheath can be made from these. */
    public static void check(Knife knife, SheathSpec spec) {
        if (!knife.outline().sampled(1).polygon().isValid()) {
            throw new UserFacingException(
                    "The outline of the knife crosses itself.",
                    "Move its points so that it runs round the knife once.");
        }
        knife(knife);
        if (knife.doubleEdged() && spec.kind() == SheathKind.FOLDED) {
            throw new UserFacingException(
                    "A double-edged knife would cut a body that is folded round its second edge.",
                    "Choose a sheath of two panels, with a welt all round.");
        }
        leather(spec.leather(), spec.welt());
        hardware(spec.hardware());
        SpecFields.STITCH_MARGIN.checkedMm(spec.stitching().marginMm());
        SpecFields.PITCH.checkedMm(spec.stitching().pitchMm());
        SpecFields.BACK_STITCHES.checked(spec.stitching().backStitches());
        SpecFields.THROAT_DEPTH.checkedMm(spec.throat().depthMm());
        SpecFields.EASE.checkedMm(spec.easeMm());
        SpecFields.BELT_WIDTH.checkedMm(spec.belt().beltWidthMm());
        SpecFields.BELT_THICKNESS.checkedMm(spec.belt().beltThicknessMm());
        SpecFields.TILT.checked(Math.toDegrees(spec.carry().tiltRad()));
        spec.depth()
                .handleMm()
                .ifPresent(
                        LengthField.of("depth of the handle in the sheath", 0, InsertionDepth.mostMm(knife))
                                ::checkedMm);
        SpecFields.BELT_STRAP_WIDTH.checkedMm(spec.belt().strap().widthMm());
        spec.belt().strap().thicknessMm().ifPresent(SpecFields.BELT_STRAP_LEATHER::checkedMm);
        spec.strap().ifPresent(strap -> {
            SpecFields.STRAP_ALLOWANCE.checkedMm(strap.allowanceMm());
            SpecFields.STRAP_WIDTH.checkedMm(strap.leather().widthMm());
            strap.leather().thicknessMm().ifPresent(SpecFields.STRAP_LEATHER::checkedMm);
        });
        if (spec.drain().diameterMm() != 0 && !spec.drain().eyelet()) {
            LengthField.of("diameter of the drain hole", 1, 10)
                    .checkedMm(spec.drain().diameterMm());
        }
    }

    private static void knife(Knife knife) {
        SpecFields.SPINE_THICKNESS.checkedMm(knife.spineThicknessMm());
        SpecFields.HANDLE_THICKNESS.checkedMm(knife.handleThicknessMm());
        SpecFields.HANDLE_SQUARENESS.checked(knife.shaping().handleExponent());
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
                throw new UserFacingException(
                        "In the list of hardware the sizes of the " + fastener.name() + " cannot be.",
                        "Its cap must be wider than its post, and its grip go from thin to thick.");
            }
        }
        for (Ring ring : list.rings()) {
            if (!(ring.insideMm() > 0 && ring.wireMm() > 0)) {
                throw new UserFacingException(
                        "In the list of hardware the sizes of the " + ring.name() + " cannot be.",
                        "Measure one, and put its sizes there.");
            }
        }
    }

    private static void leather(Leather leather, WeltSpec welt) {
        SpecFields.LEATHER_THICKNESS.checkedMm(leather.thicknessMm());
        SpecFields.NEUTRAL_FACTOR.checked(leather.neutralFactor());
        SpecFields.FORMING_GIVE.checkedMm(leather.giveMm());
        SpecFields.FORMING_SHRINK.checked(100 * leather.formingShrink());
        welt.layers().ifPresent(SpecFields.WELT_LAYERS::checked);
        SpecFields.WELT_INNER_MARGIN.checkedMm(welt.innerMarginMm());
        welt.leathersMm().forEach(SpecFields.LEATHER_THICKNESS::checkedMm);
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
