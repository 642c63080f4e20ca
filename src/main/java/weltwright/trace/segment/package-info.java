/**
 * Separates knife from ground and shadow: random walker, minimum cost loop.
 *
 * <p>In: Rasters and seeds.
 *
 * <p>Out: A mask of the knife, to about a pixel of the raster.
 *
 * <p>Uses: {@code camera}, {@code camera.rectification}, {@code error}, {@code geometry}, {@code geometry.fit},
 * {@code trace.appearance}, {@code trace.visibility}, {@code image} and its sub-packages; OpenCV.
 */
package weltwright.trace.segment;
