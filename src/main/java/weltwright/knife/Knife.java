package weltwright.knife;

import weltwright.geometry.Outline;

/**
 * A knife as its sheath must know it. Its frame: x from the heel of the blade (0) to the tip, y towards the spine, z
 * across the flats, with z = 0 half-way through the thickness. Seen with the tip to the right and the spine up.
 *
 * @param outline the silhouette in the mid-plane, counter-clockwise, in mm
 * @param landmarks tip, heel and the like, in the same frame
 * @param spineThicknessMm thickness of the blade at the spine by the heel; positive
 * @param edgeThicknessMm thickness of the blade behind the edge; from 0 to the spine's
 * @param handleThicknessMm greatest thickness of the handle across the flats; positive
 */
public record Knife(
        Outline outline,
        Landmarks landmarks,
        double spineThicknessMm,
        double edgeThicknessMm,
        double handleThicknessMm) {

    /** From heel to tip along the knife, in mm. */
    public double bladeLengthMm() {
        return landmarks.tip().x() - landmarks.heel().x();
    }

    /** The cross-sections of this knife. Ask once and keep them where many are wanted. */
    public Sections sections() {
        return new Sections(this);
    }

    /** The cross-section at station {@code xMm}, which must lie between butt and tip. */
    public Section sectionAt(double xMm) {
        return sections().at(xMm);
    }
}
