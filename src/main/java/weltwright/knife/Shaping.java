package weltwright.knife;

/**
 * How a knife is shaped across its flats, which no photo from above shows.
 *
 * @param edgeThicknessMm thickness of the blade behind the edge; from 0 to the spine's
 * @param grind how the blade is ground
 * @param handleExponent how square the handle is in section: 2 is an ellipse, more is a slab with rounded corners, as
 *     in {@link SuperEllipse}
 */
public record Shaping(double edgeThicknessMm, Grind grind, double handleExponent) {
    /** Between an ellipse and a rounded slab, as handles of wood mostly are. Common practice; no source. */
    public static final double USUAL_HANDLE = 2.5;

    /** A full flat grind, and a handle of the usual roundness. */
    public static Shaping usual(double edgeThicknessMm) {
        return new Shaping(edgeThicknessMm, Grind.FULL_FLAT, USUAL_HANDLE);
    }

    public Shaping withEdgeThicknessMm(double other) {
        return new Shaping(other, grind, handleExponent);
    }

    public Shaping withGrind(Grind other) {
        return new Shaping(edgeThicknessMm, other, handleExponent);
    }

    public Shaping withHandleExponent(double other) {
        return new Shaping(edgeThicknessMm, grind, other);
    }
}
