package weltwright.ground.ruled;

import weltwright.geometry.Point;

/**
 * A crossing of two ruled lines in a picture.
 *
 * @param pixel its position
 * @param contrast the lesser contrast of its lines against the ground, in grey levels
 * @param widthPx width of the narrower line
 * @param arms number of visible arms, the stretches of line towards its four neighbours: 3 at the end of a line or the
 *     border of the knife, else 4
 */
record LineCrossing(Point pixel, double contrast, double widthPx, int arms) {}
