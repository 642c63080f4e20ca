package weltwright.sheath.attachment;

import weltwright.fit.LeatherBend;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;

/**
 * A strip of leather that is folded over a belt or a wire and returns to where it started. Its second leg first lies on
 * what passes through, then closes at an angle to the first leg.
 *
 * @param openingMm distance from its start to the inside of the fold
 * @param throughMm thickness of what passes through
 * @param alongMm length, from the end of the bend, over which the second leg lies on what passes through
 * @param leather of the strip
 */
record FoldedLoop(double openingMm, double throughMm, double alongMm, Leather leather) {
    /** Clearance beyond the belt's width, so that a stitched belt slides in. Common practice. */
    static final double CLEARANCE_MM = 10;

    /** Returns a loop over the belt, which fills its upper part. */
    static FoldedLoop belt(BeltAttachment belt, Leather leather) {
        return new FoldedLoop(
                belt.beltWidthMm() + CLEARANCE_MM,
                belt.beltThicknessMm(),
                Math.max(0, belt.beltWidthMm() - belt.beltThicknessMm() / 2),
                leather);
    }

    /** Returns a loop over a ring's wire. */
    static FoldedLoop wire(double openingMm, double wireMm, Leather leather) {
        return new FoldedLoop(openingMm, wireMm, 0, leather);
    }

    /** Returns a loop with a larger opening, the addition below what passes through. */
    FoldedLoop longerBy(double moreMm) {
        return new FoldedLoop(openingMm + moreMm, throughMm, alongMm, leather);
    }

    /** Returns the flat length from its start to where it returns. */
    double lengthMm() {
        return upMm() + bendMm() + downMm();
    }

    /** Returns the flat length from its start to the middle of the fold. */
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
        return new LeatherBend(Math.PI, insideRadiusMm(), leather.thicknessMm(), leather.neutralFactor()).allowanceMm();
    }

    /** Returns the length of the second leg, from the end of the bend, offset by what passes through, to the start. */
    private double downMm() {
        return alongMm + Math.hypot(upMm() - alongMm, throughMm);
    }
}
