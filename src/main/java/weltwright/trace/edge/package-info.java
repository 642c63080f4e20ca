/**
 * Follows the knife's edge along a rough contour, to a fraction of a pixel.
 *
 * <p>In: A contour and a decoded photo.
 *
 * <p>Out: Edge points with their uncertainty.
 *
 * <p>Uses: {@code geometry}, {@code geometry.fit}, {@code image}, {@code image.parallel} and {@code trace.appearance};
 * OpenCV.
 */
package weltwright.trace.edge;
