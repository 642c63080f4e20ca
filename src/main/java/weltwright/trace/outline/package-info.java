/**
 * From edge points to the silhouette in the mid-plane: parallax of thickness, line of the handle's front, uncertain
 * stretches.
 *
 * <p>In: Edge points and a solved view.
 *
 * <p>Out: A silhouette with its uncertain stretches.
 *
 * <p>Uses: {@code camera}, {@code camera.rectification}, {@code error}, {@code image}, {@code knife},
 * {@code trace.appearance}, {@code trace.edge}, {@code geometry} and its sub-packages; OpenCV and JTS.
 */
package weltwright.trace.outline;
