package weltwright.knife;

/**
 * The grind of a blade from its spine to its edge.
 *
 * @param kind the shape of the flats
 * @param heightMm height of the grind from the edge, for kinds that end below the spine; else ignored
 */
public record Grind(Kind kind, double heightMm) {
    /** A wedge from edge to spine. */
    public static final Grind FULL_FLAT = new Grind(Kind.FULL_FLAT, 0);

    /** Thickest in the middle, with an edge on both sides. */
    public static final Grind DOUBLE_EDGED = new Grind(Kind.DOUBLE_EDGED, 0);

    /** Height of a grind that ends below the spine. From memory. */
    private static final double USUAL_HEIGHT_MM = 10;

    /** A shape of the flats. */
    public enum Kind {
        /** A wedge from edge to spine. */
        FULL_FLAT,
        /** Flat from the edge up to a line below the spine, and as thick as the spine above that. */
        PARTIAL_FLAT,
        /** A bevel that runs out to the edge itself, with no thickness behind it. */
        SHORT_BEVEL,
        /** Hollow, ground on a wheel, from the edge up to a line below the spine. */
        HOLLOW,
        /** Thickest in the middle, with an edge on both sides. */
        DOUBLE_EDGED
    }

    /** Returns a grind of another kind, with this height where there is one, else a usual one. */
    public Grind with(Kind other) {
        return new Grind(other, hasHeight() ? heightMm : USUAL_HEIGHT_MM);
    }

    /** Returns whether both sides of the blade are sharp. */
    public boolean doubleEdged() {
        return kind == Kind.DOUBLE_EDGED;
    }

    /** Returns whether the grind ends at a line below the spine, whose height must be known. */
    public boolean hasHeight() {
        return kind == Kind.PARTIAL_FLAT || kind == Kind.SHORT_BEVEL || kind == Kind.HOLLOW;
    }
}
