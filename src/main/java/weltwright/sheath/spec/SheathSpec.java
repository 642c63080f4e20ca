package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;
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
@RecordBuilder
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
        HardwareList hardware)
        implements SheathSpecBuilder.With {

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

    public SheathSpec withHandleDepthMm(double mm) {
        return withDepth(depth.withHandleMm(OptionalDouble.of(mm)));
    }
}
