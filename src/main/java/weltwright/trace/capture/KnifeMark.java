package weltwright.trace.capture;

import weltwright.geometry.Point;

/**
 * A place of a photo at which the user told whether the knife is to be seen there.
 *
 * @param pixel in the upright photo
 * @param isKnife whether it is the knife; otherwise ground, a shadow or another object
 */
public record KnifeMark(Point pixel, boolean isKnife) {}
