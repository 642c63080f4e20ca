package weltwright.ground;

import weltwright.geometry.Point;

/**
 * A place on the ground where a profile across an edge or a line is sampled, to measure how sharp the photo is and how
 * it is lit.
 *
 * @param from start of the profile in the ground frame, in mm: on one side of an edge, or on the middle of a line
 * @param across from the profile's start to its end, in mm
 * @param halfLengthMm length, to either side of the profile, over which the edge is straight
 * @param line true for a line, whose middle is the start; false for an edge, which lies half way
 */
public record EdgeProfileLocation(Point from, Point across, double halfLengthMm, boolean line) {}
