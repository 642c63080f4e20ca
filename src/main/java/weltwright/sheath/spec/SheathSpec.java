package weltwright.sheath.spec;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.sheath.hardware.HardwareList;

/**
 * What the maker chooses. Every sheath that the program draws follows from a knife and one of these.
 *
 * @param kind how the body is built
 * @param carry how it is worn
 * @param leather of body, face and back
 * @param welt how that is made
 * @param stitching how it is sewn
 * @param throat how the open end is cut
 * @param belt how it is held on the belt
 * @param strap round the handle, if there is one
 * @param easeMm of air round the knife's section
 * @param depth how far the knife goes in
 * @param drain the hole at the tip
 * @param hardware what there is at hand to take rivets, snaps, eyelets and rings from
 */
public record SheathSpec(
        SheathKind kind,
        CarryPosition carry,
        Leather leather,
        WeltSpec welt,
        Stitching stitching,
        Throat throat,
        BeltAttachment belt,
        Optional<HandleStrap> strap,
        double easeMm,
        InsertionDepth depth,
        DrainHole drain,
        HardwareList hardware) {

    /** A plain sheath for a belt knife: common practice. */
    public static SheathSpec standard(SheathKind kind) {
        return new SheathSpec(
                kind,
                CarryPosition.USUAL,
                Leather.USUAL,
                WeltSpec.USUAL,
                Stitching.USUAL,
                Throat.USUAL,
                BeltAttachment.USUAL,
                Optional.empty(),
                0.8,
                InsertionDepth.AS_THE_KNIFE_WANTS,
                DrainHole.USUAL,
                HardwareList.USUAL);
    }

    public SheathSpec with(SheathKind other) {
        return new SheathSpec(
                other, carry, leather, welt, stitching, throat, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(CarryPosition other) {
        return new SheathSpec(
                kind, other, leather, welt, stitching, throat, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(Leather other) {
        return new SheathSpec(kind, carry, other, welt, stitching, throat, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(WeltSpec other) {
        return new SheathSpec(
                kind, carry, leather, other, stitching, throat, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(Stitching other) {
        return new SheathSpec(kind, carry, leather, welt, other, throat, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(Throat other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, other, belt, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec with(BeltAttachment other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, throat, other, strap, easeMm, depth, drain, hardware);
    }

    public SheathSpec withStrap(Optional<HandleStrap> other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, throat, belt, other, easeMm, depth, drain, hardware);
    }

    public SheathSpec withEaseMm(double other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, throat, belt, strap, other, depth, drain, hardware);
    }

    public SheathSpec withHandleDepthMm(double mm) {
        return with(depth.withHandleMm(OptionalDouble.of(mm)));
    }

    public SheathSpec with(InsertionDepth other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, throat, belt, strap, easeMm, other, drain, hardware);
    }

    public SheathSpec with(DrainHole other) {
        return new SheathSpec(
                kind, carry, leather, welt, stitching, throat, belt, strap, easeMm, depth, other, hardware);
    }

    public SheathSpec with(HardwareList other) {
        return new SheathSpec(kind, carry, leather, welt, stitching, throat, belt, strap, easeMm, depth, drain, other);
    }
}
