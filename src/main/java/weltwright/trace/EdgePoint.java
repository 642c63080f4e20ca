package weltwright.trace;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the picture.
 *
 * @param pixel where, to a fraction of a pixel
 * @param contrast how steep the picture is across the edge there, in grey levels per pixel over all channels
 */
record EdgePoint(Point pixel, double contrast) {}
