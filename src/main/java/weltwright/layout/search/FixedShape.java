package weltwright.layout.search;

import weltwright.layout.collision.TurnedShape;

/** A shape that cannot be moved, such as a flaw in the leather, and the place of its reference point. */
public record FixedShape(TurnedShape shape, double x, double y) {}
