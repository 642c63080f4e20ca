package weltwright.trace;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the picture.
 *
 * @param pixel where, to a fraction of a pixel
 * @param clarity how steep the picture is across the edge there, over what is usual along this knife
 */
record EdgePoint(Point pixel, double clarity) {}
