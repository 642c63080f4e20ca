package weltwright.sheath;

import java.util.OptionalDouble;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.measure.Length;
import weltwright.trouble.Trouble;

/**
 * How far the knife goes into its sheath: to its guard where it has one, else as far as the maker says.
 *
 * @param handleMm how much of the handle, from the heel on, the sheath holds; 0 seats the knife to its guard or its
 *     handle's front; empty: as the knife wants it
 */
public record Depth(OptionalDouble handleMm) {
    /** To the guard; without one, so much of the handle that it is held. */
    public static final Depth AS_THE_KNIFE_WANTS = new Depth(OptionalDouble.empty());

    /** So much of a handle goes in that the sheath holds it by friction. Common practice. */
    private static final double HELD_PART = 1 / 3.0;

    /** Between throat and guard, that the guard does not chafe the leather. By judgement; no source. */
    private static final double BEFORE_GUARD_MM = 1;

    /** The hand must still find the end of the handle. */
    private static final double MOST_PART = 0.8;

    public static Depth ofHandle(double mm) {
        return new Depth(OptionalDouble.of(mm));
    }

    /**
     * Where the throat is, x in the knife's frame. Throws {@link Trouble} where a guard would have to go into the
     * sheath.
     */
    public double throatMm(Knife knife) {
        Landmarks at = knife.landmarks();
        double heel = at.heel().x();
        if (at.guard().isEmpty()) {
            return heel - handleMm.orElse(HELD_PART * handleLengthMm(knife));
        }
        double beforeGuard = at.guard().get().frontMm() + BEFORE_GUARD_MM;
        double asked = heel - handleMm.orElse(0);
        if (asked >= beforeGuard || handleMm.orElse(0) == 0) {
            return Math.max(asked, beforeGuard);
        }
        throw pastGuard(heel - beforeGuard);
    }

    /** The greatest depth of the handle that can be asked for. */
    static double mostMm(Knife knife) {
        return MOST_PART * handleLengthMm(knife);
    }

    private static double handleLengthMm(Knife knife) {
        return knife.landmarks().heel().x() - knife.landmarks().butt().x();
    }

    private static Trouble pastGuard(double mostMm) {
        String most = mostMm < 1 ? "nothing" : "at most " + new Length(Math.floor(mostMm)).inMillimetres();
        return new Trouble(
                "So deep a sheath would have to take in the guard, which stands out from the knife and does not pass the"
                        + " throat.",
                "Let the sheath hold " + most + " of the handle. If what is marked is no guard, move its marks on the"
                        + " outline or take them away.");
    }
}
