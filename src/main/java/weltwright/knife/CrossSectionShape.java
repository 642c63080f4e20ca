package weltwright.knife;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The shape of a knife's cross-sections, which a photo from above does not show.
 *
 * @param edgeThicknessMm thickness of the blade behind the edge; from 0 to the spine's
 * @param grind how the blade is ground
 * @param handleExponent exponent of the handle's section as a {@link SuperEllipse}: 2 is an ellipse, more is a slab
 *     with rounded corners
 */
@RecordBuilder
public record CrossSectionShape(double edgeThicknessMm, Grind grind, double handleExponent)
        implements CrossSectionShapeBuilder.With {
    /** Between an ellipse and a rounded slab, as handles of wood mostly are. Common practice; no source. */
    public static final double USUAL_HANDLE = 2.5;

    /** A full flat grind, and a handle of the usual roundness. */
    public static CrossSectionShape usual(double edgeThicknessMm) {
        return new CrossSectionShape(edgeThicknessMm, Grind.FULL_FLAT, USUAL_HANDLE);
    }
}
