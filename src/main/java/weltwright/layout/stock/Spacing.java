package weltwright.layout.stock;

/**
 * Distances that a layout keeps.
 *
 * @param betweenMm between two pieces, 0 or more
 * @param edgeMm from a piece to the edge of the stock and to a flaw, 0 or more; half of the other is kept at least
 */
public record Spacing(double betweenMm, double edgeMm) {
    /** Room for a knife to turn between two pieces, and for an edge that is not quite straight. Chosen by eye. */
    public static final Spacing USUAL = new Spacing(3, 3);
}
