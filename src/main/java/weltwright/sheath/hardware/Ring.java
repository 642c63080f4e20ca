package weltwright.sheath.hardware;

/**
 * A ring that a strap runs through.
 *
 * @param name what a maker asks for in a shop
 * @param insideMm its clear width, a little more than the strap's
 * @param wireMm thickness of its wire
 */
public record Ring(String name, double insideMm, double wireMm) implements Hardware {

    @Override
    public Kind kind() {
        return Kind.RING;
    }

    /** Whether a strap of such a width goes through it. */
    public boolean takes(double strapMm) {
        return strapMm <= insideMm;
    }
}
