package weltwright.sheath.spec;

/**
 * How the open end of a sheath is cut.
 *
 * @param shape of the cut
 * @param depthMm how far down it reaches: a hollow at its middle, a slant at its lower side; of no account where
 *     straight
 */
public record Throat(Shape shape, double depthMm) {
    /** A slight hollow in the face, for the hand. */
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
