package weltwright.geometry.curve;

import weltwright.geometry.Point;

/**
 * A point that an {@link Outline} passes through.
 *
 * @param at position, in mm
 * @param sharp whether the curve may have a corner here; else it is smooth
 */
public record OutlineNode(Point at, boolean sharp) {}
