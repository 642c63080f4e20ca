package weltwright.trace.edge;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the photo.
 *
 * @param pixel position, to a fraction of a pixel
 * @param clarity contrast above noise relative to the median along this knife; the weight of the point in the outline
 *     follows from it
 * @param certainty contrast above noise relative to that of a certain edge, or to the median where that is less; 1 and
 *     more is certain
 */
public record EdgePoint(Point pixel, double clarity, double certainty) {}
