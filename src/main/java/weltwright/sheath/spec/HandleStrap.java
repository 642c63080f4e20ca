package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * A strap that goes round the handle and is closed with a snap.
 *
 * @param aboveThroatMm from the throat to the middle of the strap
 * @param opens the side of the handle, seen from the face with the tip down, on which its loose end lies
 * @param allowanceMm length added to that of the leather pulled tight round the handle
 * @param leather leather of the strap
 */
@RecordBuilder
public record HandleStrap(double aboveThroatMm, Side opens, double allowanceMm, StrapLeather leather)
        implements HandleStrapBuilder.With {
    /** A strap round the handle next to its guard. Common practice. */
    public static final HandleStrap USUAL = new HandleStrap(20, Side.RIGHT, 1);

    /** A strap of the usual leather. */
    public HandleStrap(double aboveThroatMm, Side opens, double allowanceMm) {
        this(aboveThroatMm, opens, allowanceMm, StrapLeather.HANDLE);
    }

    /** A side of the sheath, seen from its face with the tip down. */
    public enum Side {
        LEFT,
        RIGHT
    }
}
