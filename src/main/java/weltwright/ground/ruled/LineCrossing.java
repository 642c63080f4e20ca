package weltwright.ground.ruled;

import weltwright.geometry.Point;

/**
 * A point where two ruled lines meet, as the picture shows it.
 *
 * @param pixel its place
 * @param contrast of its lines over the ground, in grey levels
 * @param widthPx of the narrower of its lines
 * @param arms how many of the four stretches of line around it are seen: three where a line ends, or under the knife
 */
record LineCrossing(Point pixel, double contrast, double widthPx, int arms) {}
