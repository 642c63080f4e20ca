package weltwright.trace.edge;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the picture.
 *
 * @param pixel where, to a fraction of a pixel
 * @param clarity how much steeper the picture is across the edge there than noise makes it, over what is usual along
 *     this knife: an outline keeps the nearer to a point the clearer it is
 * @param certainty the same over what is no chance any more, however clear the rest of the knife is
 */
public record EdgePoint(Point pixel, double clarity, double certainty) {}
