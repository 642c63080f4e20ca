package weltwright.knife;

import weltwright.geometry.curve.Outline;

/**
 * A knife as its sheath must know it. Its frame: x from the heel of the blade (0) to the tip, y towards the spine, z
 * across the flats, with z = 0 half-way through the thickness. Seen with the tip to the right and the spine up.
 *
 * @param outline the silhouette in the mid-plane, counter-clockwise, in mm
 * @param landmarks tip, heel and the like, in the same frame
 * @param spineThicknessMm thickness of the blade at the spine by the heel; positive
 * @param handleThicknessMm greatest thickness of the handle across the flats; positive
 * @param shaping what its sections are like between those thicknesses
 * @param thickness what was measured of its thickness elsewhere along it
 */
public record Knife(
        Outline outline,
        Landmarks landmarks,
        double spineThicknessMm,
        double handleThicknessMm,
        CrossSectionShape shaping,
        ThicknessProfile thickness) {

    /** A knife of which no more is measured than its two thicknesses. */
    public Knife(
            Outline outline,
            Landmarks landmarks,
            double spineThicknessMm,
            double handleThicknessMm,
            CrossSectionShape shaping) {
        this(outline, landmarks, spineThicknessMm, handleThicknessMm, shaping, ThicknessProfile.NONE);
    }

    public Knife withThickness(ThicknessProfile other) {
        return new Knife(outline, landmarks, spineThicknessMm, handleThicknessMm, shaping, other);
    }

    /** Whether the spine's side cuts as the edge's does. */
    public boolean doubleEdged() {
        return shaping.grind().doubleEdged();
    }

    /** From heel to tip along the knife, in mm. */
    public double bladeLengthMm() {
        return landmarks.tip().x() - landmarks.heel().x();
    }

    /** The cross-sections of this knife. Ask once and keep them where many are wanted. */
    public CrossSections sections() {
        return new CrossSections(this);
    }

    /** The cross-section at station {@code xMm}, which must lie between butt and tip. */
    public CrossSection sectionAt(double xMm) {
        return sections().at(xMm);
    }
}
