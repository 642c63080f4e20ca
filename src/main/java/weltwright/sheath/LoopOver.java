package weltwright.sheath;

import weltwright.fit.Bend;

/**
 * Leather that runs up, is folded over something, such as a belt, and comes down again aslant to where it started.
 *
 * @param openingMm from where it starts to the inside of the fold
 * @param throughMm thickness of what passes through
 * @param leather that is folded
 */
record LoopOver(double openingMm, double throughMm, Leather leather) {
    /** Room for a belt's width beyond its own, so that a stitched belt still slides in. Common practice. */
    static final double PLAY_MM = 6;

    static LoopOver belt(SheathSpec spec) {
        return new LoopOver(spec.belt().beltWidthMm() + PLAY_MM, spec.belt().beltThicknessMm(), spec.leather());
    }

    /** Flat, from its start to where it comes back to it. */
    double lengthMm() {
        return upMm() + bendMm() + downMm();
    }

    /** Flat, from its start to the middle of the fold. */
    double foldMm() {
        return upMm() + bendMm() / 2;
    }

    private double insideRadiusMm() {
        return throughMm / 2;
    }

    private double upMm() {
        return openingMm - insideRadiusMm();
    }

    private double bendMm() {
        return new Bend(Math.PI, insideRadiusMm(), leather.thicknessMm(), leather.neutralFactor()).allowanceMm();
    }

    /** From the end of the bend, the thickness behind where it went up, aslant to the start, where they meet. */
    private double downMm() {
        return Math.hypot(upMm(), throughMm);
    }
}
