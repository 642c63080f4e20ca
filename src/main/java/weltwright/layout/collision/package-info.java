/**
 * Shapes as arrays of numbers, and how much two of them overlap: what the search for a layout asks millions of times.
 *
 * <p>In: Simple polygons.
 *
 * <p>Out: Whether two placed shapes collide, and a measure of their overlap.
 *
 * <p>Uses: {@code geometry}, to prepare a shape but not to compare two.
 */
package weltwright.layout.collision;
