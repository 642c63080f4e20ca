/**
 * Points, chains of segments, areas and rigid motions of the plane. Lengths are mm unless a name says px.
 *
 * <p>In: Coordinates.
 *
 * <p>Out: Immutable values.
 *
 * <p>Uses: No other package; JTS.
 */
package weltwright.geometry;
