package weltwright.sheath.attachment;

import weltwright.sheath.planform.ThroatCut;

/** Flat backs with a straight throat, to attach things to. */
final class TestBacks {
    /** Not 0, so that what is measured from the throat is told from what is not. */
    static final double THROAT_MM = 7;

    /** Wide and long enough for anything. */
    static final BackArea ROOMY = between(-40, 40);

    private TestBacks() {}

    /** A back from one y to another, on which stitches may lie anywhere. */
    static BackArea between(double fromMm, double toMm) {
        return leaning(0, fromMm, toMm);
    }

    static BackArea leaning(double leanRad, double fromMm, double toMm) {
        return of(leanRad, fromMm, fromMm, toMm, toMm);
    }

    static BackArea of(double leanRad, double fromMm, double lowMm, double highMm, double toMm) {
        ThroatCut cut = ThroatCut.straight(THROAT_MM, Double.POSITIVE_INFINITY);
        return new BackArea(THROAT_MM, lowMm, highMm, 200, leanRad, cut, fromMm, toMm);
    }

    static BackArea ofLength(double lengthMm) {
        return new BackArea(THROAT_MM, -40, 40, lengthMm, 0, ROOMY.cut(), -40, 40);
    }
}
