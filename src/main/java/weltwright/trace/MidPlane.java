package weltwright.trace;

import weltwright.geometry.Point;

/**
 * The plane half-way through the knife's thickness, over the sheet: z = height + slope · (x, y) in the sheet frame.
 *
 * @param heightMm over the sheet's origin
 * @param slope the gradient: mm up for each mm along x and y
 */
public record MidPlane(double heightMm, Point slope) {}
