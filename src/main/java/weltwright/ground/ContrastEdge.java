package weltwright.ground;

import weltwright.geometry.Point;

/**
 * A place of a ground at which light meets dark: how sharp a photo is, and how it is lit, shows there.
 *
 * @param from where to begin to look, in the ground frame, in mm: on one side of an edge, or on a line's middle
 * @param across the way to look, its length that to look over, in mm
 * @param halfLengthMm how far the edge runs straight to either side
 * @param line whether it begins on a line's middle; else an edge lies half way
 */
public record ContrastEdge(Point from, Point across, double halfLengthMm, boolean line) {}
