package weltwright.trace.edge;

import weltwright.geometry.Point;

/**
 * A point of the knife's silhouette in the photo.
 *
 * @param pixel position, to a fraction of a pixel
 * @param certainty contrast above noise relative to that of a certain edge, or to the median along the knife where that
 *     is less; 1 and more is certain. The weight of the point in the outline follows from it
 */
public record EdgePoint(Point pixel, double certainty) {}
