package weltwright.knife;

/**
 * The shape of a handle's cross-section as a maker sees it, looking at the butt. The exponents are those of a
 * {@link SuperEllipse}; common practice, as seen on handles of wood and of slabs.
 */
public enum HandleSection {
    /** Not told: any of the others. */
    UNKNOWN(2.6, 0.8),
    /** An ellipse, as of a turned or carved handle. */
    ROUND(2, 0.3),
    /** Between an ellipse and a slab, as of most handles of wood. */
    OVAL(2.6, 0.3),
    /** Two flat sides with rounded corners. */
    SLAB(3.6, 0.5);

    private final double exponent;
    private final double spread;

    HandleSection(double exponent, double spread) {
        this.exponent = exponent;
        this.spread = spread;
    }

    /** Returns the exponent of the section. */
    public double exponent() {
        return exponent;
    }

    /** Returns by how much the exponent of nearly all such handles is greater or less. */
    public double spread() {
        return spread;
    }
}
