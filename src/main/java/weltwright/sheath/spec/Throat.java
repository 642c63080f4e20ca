package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The cut of the open end of a sheath.
 *
 * @param shape of the cut
 * @param depthMm depth of a hollow at its middle, or of a slant at its lower side; ignored where straight
 */
@RecordBuilder
public record Throat(Shape shape, double depthMm) implements ThroatBuilder.With {
    /** A slight hollow in the face, for the hand. Common practice. */
    public static final Throat USUAL = new Throat(Shape.CURVED, 4);

    /** The shape of the cut. */
    public enum Shape {
        STRAIGHT,
        /** Straight, and lower on the edge's side. */
        SLANTED_TO_EDGE,
        /** Straight, and lower on the spine's side. */
        SLANTED_TO_SPINE,
        /** The face is hollowed in its middle; what lies under it is straight. */
        CURVED
    }
}
