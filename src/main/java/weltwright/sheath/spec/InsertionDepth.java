package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.OptionalDouble;
import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.message.Messages;
import weltwright.units.Length;

/**
 * The depth to which the knife goes into its sheath: to its guard where it has one and the sheath is not opened for it,
 * else as chosen.
 *
 * @param handleMm length of the handle, from the heel on, that the sheath holds; 0 seats the knife to its guard or its
 *     handle's front; empty: by the knife
 * @param guard what is done for a guard that does not pass the throat
 */
@RecordBuilder
public record InsertionDepth(OptionalDouble handleMm, GuardOpening guard) implements InsertionDepthBuilder.With {
    private static final Messages TEXTS = Messages.of(InsertionDepth.class);

    /** To the guard; without one, as much of the handle as holds it. */
    public static final InsertionDepth BY_THE_KNIFE = new InsertionDepth(OptionalDouble.empty());

    /** Share of the handle by which the sheath holds it by friction. Common practice. */
    private static final double HELD_PART = 1 / 3.0;

    /** Distance between throat and guard, so that the guard does not chafe the leather. Chosen by eye. */
    private static final double BEFORE_GUARD_MM = 1;

    /** Least length of leather past a guard that the sheath is opened for. Chosen by eye. */
    private static final double PAST_GUARD_MM = 10;

    /** Greatest share of the handle in the sheath, so that the hand can grasp its end. Chosen by eye. */
    private static final double MOST_PART = 0.8;

    /** The depth in a sheath that is not opened for a guard. */
    public InsertionDepth(OptionalDouble handleMm) {
        this(handleMm, GuardOpening.NONE);
    }

    public static InsertionDepth ofHandle(double mm) {
        return new InsertionDepth(OptionalDouble.of(mm));
    }

    /**
     * Returns x of the throat in the knife's frame. Throws {@link UserFacingException} where a guard would have to go
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
        double byKnife = opened ? HELD_PART * handleLengthMm(knife) : 0;
        double chosen = heel - handleMm.orElse(byKnife);
        if (chosen >= beforeGuard || handleMm.orElse(byKnife) == 0) {
            return Math.max(chosen, beforeGuard);
        }
        if (!opened) {
            throw pastGuard(heel - beforeGuard);
        }
        double pastGuard = at.guard().get().backMm() - PAST_GUARD_MM;
        if (chosen > pastGuard && handleMm.isPresent()) {
            throw acrossGuard(heel - pastGuard);
        }
        return Math.min(chosen, pastGuard);
    }

    /** Returns the greatest depth of the handle that can be chosen. */
    static double mostMm(Knife knife) {
        return MOST_PART * handleLengthMm(knife);
    }

    private static double handleLengthMm(Knife knife) {
        return knife.landmarks().heel().x() - knife.landmarks().butt().x();
    }

    private static UserFacingException pastGuard(double mostMm) {
        String most = mostMm < 1
                ? TEXTS.text("insertion-depth.nothing")
                : TEXTS.text("insertion-depth.at-most", new Length(Math.floor(mostMm)).inMillimetres());
        return new UserFacingException(
                TEXTS.text("insertion-depth.so-deep-a-sheath-would"),
                TEXTS.text("insertion-depth.let-the-sheath-hold-of", most));
    }

    private static UserFacingException acrossGuard(double leastMm) {
        return new UserFacingException(
                TEXTS.text("insertion-depth.a-sheath-whose-side-is"),
                TEXTS.text("insertion-depth.let-the-sheath-hold-at", new Length(Math.ceil(leastMm)).inMillimetres()));
    }
}
