/**
 * Pictures of a plane seen square on, made from a photo and a solved view.
 *
 * <p>In: A decoded photo and a solved view.
 *
 * <p>Out: Rasters of equal mm per pixel.
 *
 * <p>Uses: {@code camera}, {@code geometry}, {@code image} and its sub-packages; OpenCV.
 */
package weltwright.camera.rectification;
