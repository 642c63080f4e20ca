package weltwright.sheath.spec;

import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.message.Messages;
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
    private static final Messages TEXTS = Messages.of(SpecValidator.class);

    private SpecValidator() {}

    /** Throws where no sheath can be made from these. */
    public static void check(Knife knife, SheathSpec spec) {
        if (!knife.outline().sampled(1).polygon().isValid()) {
            throw new UserFacingException(
                    TEXTS.text("spec-validator.the-outline-of-the-knife"),
                    TEXTS.text("spec-validator.move-its-points-so-that"));
        }
        knife(knife);
        if (knife.doubleEdged() && spec.kind() == SheathKind.FOLDED) {
            throw new UserFacingException(
                    TEXTS.text("spec-validator.a-double-edged-knife-would"),
                    TEXTS.text("spec-validator.choose-a-sheath-of-two"));
        }
        leather(spec.leather(), spec.welt());
        hardware(spec.hardware());
        SpecFields.STITCH_MARGIN.checkedMm(spec.stitching().marginMm());
        SpecFields.PITCH.checkedMm(spec.stitching().pitchMm());
        SpecFields.BACK_STITCHES.checked(spec.stitching().backStitches());
        spec.stitching().threadMm().ifPresent(SpecFields.THREAD::checkedMm);
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
                        TEXTS.text("spec-validator.in-the-list-of-hardware", fastener.words()),
                        TEXTS.text("spec-validator.its-cap-must-be-wider"));
            }
        }
        for (Ring ring : list.rings()) {
            if (!(ring.insideMm() > 0 && ring.wireMm() > 0)) {
                throw new UserFacingException(
                        TEXTS.text("spec-validator.in-the-list-of-hardware", ring.words()),
                        TEXTS.text("spec-validator.measure-one-and-put-its"));
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
