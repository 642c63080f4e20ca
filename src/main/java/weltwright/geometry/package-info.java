/**
 * Curves and outlines in the plane, over JTS: points, arc length, smooth curves with true corners; least squares and
 * medians. Lengths in mm.
 */
package weltwright.geometry;
