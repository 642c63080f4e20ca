package weltwright.sheath.attachment;

import weltwright.fit.LeatherBend;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;

/**
 * Leather that runs up, is folded over something, such as a belt, and comes down again to where it started: first along
 * what passes through, then aslant, for there the two legs close to a wedge.
 *
 * @param openingMm from where it starts to the inside of the fold
 * @param throughMm thickness of what passes through
 * @param alongMm how far, from the end of the bend, the leg that comes down lies on what passes through
 * @param leather that is folded
 */
record FoldedLoop(double openingMm, double throughMm, double alongMm, Leather leather) {
    /** Room for a belt's width beyond its own, so that a stitched belt still slides in. Common practice. */
    static final double PLAY_MM = 10;

    /** Over the belt, which fills the upper part of it. */
    static FoldedLoop belt(BeltAttachment belt, Leather leather) {
        return new FoldedLoop(
                belt.beltWidthMm() + PLAY_MM,
                belt.beltThicknessMm(),
                Math.max(0, belt.beltWidthMm() - belt.beltThicknessMm() / 2),
                leather);
    }

    /** Over a ring's wire. */
    static FoldedLoop wire(double openingMm, double wireMm, Leather leather) {
        return new FoldedLoop(openingMm, wireMm, 0, leather);
    }

    /** The same, but open by so much more below what passes through. */
    FoldedLoop longerBy(double moreMm) {
        return new FoldedLoop(openingMm + moreMm, throughMm, alongMm, leather);
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
        return new LeatherBend(Math.PI, insideRadiusMm(), leather.thicknessMm(), leather.neutralFactor()).allowanceMm();
    }

    /** From the end of the bend, the thickness behind where it went up, to the start, where they meet. */
    private double downMm() {
        return alongMm + Math.hypot(upMm() - alongMm, throughMm);
    }
}
