package weltwright.sheath.spec;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.sheath.hardware.HardwareList;

/**
 * The maker's choices. A sheath follows from a knife and these alone.
 *
 * @param kind construction of the body
 * @param carry position in which it is worn
 * @param leather of body, face and back
 * @param welt how the welt is made
 * @param stitching how it is sewn
 * @param throat cut of the open end
 * @param belt what holds it on the belt
 * @param strap round the handle, if there is one
 * @param easeMm clearance round the knife's section
 * @param depth of the knife in the sheath
 * @param drain the hole at the tip
 * @param hardware rivets, snaps, eyelets and rings at hand
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

    /** Returns the choices for a plain sheath for a belt knife. Common practice. */
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
                InsertionDepth.BY_THE_KNIFE,
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
