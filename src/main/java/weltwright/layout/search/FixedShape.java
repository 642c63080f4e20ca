package weltwright.layout.search;

import weltwright.layout.collision.TurnedShape;

/**
 * A shape that cannot be moved, such as a flaw in the leather, and the place of its reference point.
 *
 * @param forSome whether only the items that {@link SearchItem#choosy} keep clear of it
 */
public record FixedShape(TurnedShape shape, double x, double y, boolean forSome) {
    /** A shape that all items keep clear of. */
    public FixedShape(TurnedShape shape, double x, double y) {
        this(shape, x, y, false);
    }
}
