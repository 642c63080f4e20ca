package weltwright.sheath.spec;

import java.util.OptionalDouble;
import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.units.Length;

/**
 * How far the knife goes into its sheath: to its guard where it has one and the sheath is not opened for it, else as
 * far as the maker says.
 *
 * @param handleMm how much of the handle, from the heel on, the sheath holds; 0 seats the knife to its guard or its
 *     handle's front; empty: as the knife wants it
 * @param guard what is done about a guard that does not pass the throat
 */
public record InsertionDepth(OptionalDouble handleMm, GuardOpening guard) {
    /** To the guard; without one, so much of the handle that it is held. */
    public static final InsertionDepth AS_THE_KNIFE_WANTS = new InsertionDepth(OptionalDouble.empty());

    /** So much of a handle goes in that the sheath holds it by friction. Common practice. */
    private static final double HELD_PART = 1 / 3.0;

    /** Between throat and guard, that the guard does not chafe the leather. By judgement; no source. */
    private static final double BEFORE_GUARD_MM = 1;

    /** So much of the leather at least reaches past a guard that it is opened for. By judgement; no source. */
    private static final double PAST_GUARD_MM = 10;

    /** The hand must still find the end of the handle. */
    private static final double MOST_PART = 0.8;

    /** Of a sheath that is not opened for a guard. */
    public InsertionDepth(OptionalDouble handleMm) {
        this(handleMm, GuardOpening.NONE);
    }

    public static InsertionDepth ofHandle(double mm) {
        return new InsertionDepth(OptionalDouble.of(mm));
    }

    public InsertionDepth withHandleMm(OptionalDouble other) {
        return new InsertionDepth(other, guard);
    }

    public InsertionDepth with(GuardOpening other) {
        return new InsertionDepth(handleMm, other);
    }

    /**
     * Where the throat is, x in the knife's frame. Throws {@link UserFacingException} where a guard would have to go
     * into the sheath.
     */
    public double throatMm(Knife knife) {
        Landmarks at = knife.landmarks();
        double heel = at.heel().x();
        if (at.guard().isEmpty()) {
            return heel - handleMm.orElse(HELD_PART * handleLengthMm(knife));
        }
        double beforeGuard = at.guard().get().frontMm() + BEFORE_GUARD_MM;
        boolean opened = guard == GuardOpening.OPEN_SIDE;
        double unsaid = opened ? HELD_PART * handleLengthMm(knife) : 0;
        double asked = heel - handleMm.orElse(unsaid);
        if (asked >= beforeGuard || handleMm.orElse(unsaid) == 0) {
            return Math.max(asked, beforeGuard);
        }
        if (!opened) {
            throw pastGuard(heel - beforeGuard);
        }
        double pastGuard = at.guard().get().backMm() - PAST_GUARD_MM;
        if (asked > pastGuard && handleMm.isPresent()) {
            throw acrossGuard(heel - pastGuard);
        }
        return Math.min(asked, pastGuard);
    }

    /** The greatest depth of the handle that can be asked for. */
    static double mostMm(Knife knife) {
        return MOST_PART * handleLengthMm(knife);
    }

    private static double handleLengthMm(Knife knife) {
        return knife.landmarks().heel().x() - knife.landmarks().butt().x();
    }

    private static UserFacingException pastGuard(double mostMm) {
        String most = mostMm < 1 ? "nothing" : "at most " + new Length(Math.floor(mostMm)).inMillimetres();
        return new UserFacingException(
                "So deep a sheath would have to take in the guard, which stands out from the knife and does not pass the"
                        + " throat.",
                "Let the sheath hold " + most
                        + " of the handle, or open its side for the guard. If what is marked is no"
                        + " guard, move its marks on the outline or take them away.");
    }

    private static UserFacingException acrossGuard(double leastMm) {
        return new UserFacingException(
                "A sheath whose side is opened for the guard must reach past it, and this one would end on the guard.",
                "Let the sheath hold at least " + new Length(Math.ceil(leastMm)).inMillimetres()
                        + " of the handle, or nothing of it.");
    }
}
