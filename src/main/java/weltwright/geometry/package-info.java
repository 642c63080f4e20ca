/**
 * Curves and outlines in the plane, over JTS: points, arc length, smooth curves with true corners; least squares, order
 * statistics. Lengths in mm.
 */
package weltwright.geometry;
