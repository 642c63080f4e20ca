package weltwright.geometry.curve;

import weltwright.geometry.Point;

/**
 * A point that an {@link Outline} passes through.
 *
 * @param at where, in mm
 * @param sharp whether the curve may turn a corner here; else it passes smoothly
 */
public record OutlineNode(Point at, boolean sharp) {}
