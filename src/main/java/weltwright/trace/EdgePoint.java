package weltwright.trace;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the picture.
 *
 * @param pixel where, to a fraction of a pixel
 * @param clarity how much steeper the picture is across the edge there than noise makes it, over what is usual along this
 *     knife
 */
record EdgePoint(Point pixel, double clarity) {}
