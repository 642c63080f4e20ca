package weltwright.sheath.hardware;

/**
 * A ring that a strap runs through.
 *
 * @param name as in a shop
 * @param insideMm clear width, a little more than the strap's
 * @param wireMm thickness of its wire
 */
public record Ring(String name, double insideMm, double wireMm) implements Hardware {

    @Override
    public Kind kind() {
        return Kind.RING;
    }

    /** Returns whether a strap of this width goes through it. */
    public boolean takes(double strapMm) {
        return strapMm <= insideMm;
    }
}
