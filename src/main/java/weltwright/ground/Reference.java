package weltwright.ground;

import weltwright.geometry.Point;

/**
 * A point of the ground whose place is known, and where the picture shows it.
 *
 * @param onGround its place in the ground frame, in mm
 * @param pixel its place in the picture, in pixels, to a fraction of one
 */
public record Reference(Point onGround, Point pixel) {}
