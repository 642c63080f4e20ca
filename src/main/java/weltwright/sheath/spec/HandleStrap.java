package weltwright.sheath.spec;

/**
 * A strap that goes round the handle and is closed with a snap.
 *
 * @param aboveThroatMm from the throat to the middle of the strap
 * @param opens the side of the handle, seen from the face with the tip down, on which its loose end lies
 * @param allowanceMm how much longer it is than the leather pulled tight round the handle
 * @param leather of what it is cut
 */
public record HandleStrap(double aboveThroatMm, Side opens, double allowanceMm, StrapLeather leather) {
    /** Round the handle next to its guard. */
    public static final HandleStrap USUAL = new HandleStrap(20, Side.RIGHT, 1);

    /** A usual strap in some place. */
    public HandleStrap(double aboveThroatMm, Side opens, double allowanceMm) {
        this(aboveThroatMm, opens, allowanceMm, StrapLeather.HANDLE);
    }

    public HandleStrap with(StrapLeather other) {
        return new HandleStrap(aboveThroatMm, opens, allowanceMm, other);
    }

    /** A side of the sheath, seen from its face with the tip down. */
    public enum Side {
        LEFT,
        RIGHT
    }
}
