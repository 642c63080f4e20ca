package weltwright.sheath;

/**
 * The hole at the tip that lets water out.
 *
 * @param diameterMm of the hole, or 0 for none; of no account where it is lined
 * @param eyelet whether it is lined with an eyelet, whose post then gives the hole its size
 */
public record Drain(double diameterMm, boolean eyelet) {
    /** A plain hole of 4 mm. Common practice. */
    public static final Drain USUAL = new Drain(4, false);

    /** A tip without a hole. */
    public static final Drain NONE = new Drain(0, false);
}
