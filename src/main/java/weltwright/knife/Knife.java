package weltwright.knife;

import io.soabase.recordbuilder.core.RecordBuilder;
import weltwright.geometry.curve.Outline;

/**
 * A knife: outline, landmarks and thicknesses. In its frame x runs from the heel of the blade (0) to the tip, y towards
 * the spine, z across the flats, with z = 0 half-way through the thickness.
 *
 * @param outline the silhouette in the mid-plane, counter-clockwise, in mm
 * @param landmarks in the same frame
 * @param spineThicknessMm thickness of the blade at the spine by the heel; positive
 * @param handleThicknessMm greatest thickness of the handle across the flats; positive
 * @param shaping of its cross-sections
 * @param thickness further thicknesses measured along it
 */
@RecordBuilder
public record Knife(
        Outline outline,
        Landmarks landmarks,
        double spineThicknessMm,
        double handleThicknessMm,
        CrossSectionShape shaping,
        ThicknessProfile thickness)
        implements KnifeBuilder.With {

    /** A knife with no further thicknesses measured. */
    public Knife(
            Outline outline,
            Landmarks landmarks,
            double spineThicknessMm,
            double handleThicknessMm,
            CrossSectionShape shaping) {
        this(outline, landmarks, spineThicknessMm, handleThicknessMm, shaping, ThicknessProfile.NONE);
    }

    /** Returns whether the spine's side is sharp, too. */
    public boolean doubleEdged() {
        return shaping.grind().doubleEdged();
    }

    /** Returns the length from heel to tip along the knife, in mm. */
    public double bladeLengthMm() {
        return landmarks.tip().x() - landmarks.heel().x();
    }

    /** Returns the cross-sections of this knife. Keep the result where many are needed, as it samples the outline. */
    public CrossSections sections() {
        return new CrossSections(this);
    }

    /** Returns the cross-section at station {@code xMm}, which must lie between butt and tip. */
    public CrossSection sectionAt(double xMm) {
        return sections().at(xMm);
    }
}
