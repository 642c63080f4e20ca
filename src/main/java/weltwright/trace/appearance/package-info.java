/**
 * How paper and print look in a photo: illumination, reflectance, colour, and the print that is expected at each pixel.
 *
 * <p>In: Rectified rasters and the layout of the ground.
 *
 * <p>Out: Expected and measured reflectance.
 *
 * <p>Uses: {@code camera}, {@code camera.rectification}, {@code geometry}, {@code geometry.fit}, {@code ground.sheet},
 * {@code units}, {@code image} and its sub-packages; OpenCV and JTS.
 */
package weltwright.trace.appearance;
