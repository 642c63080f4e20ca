/**
 * What is known of a lens before the photo is solved: from Exif, from the user, or calibrated.
 *
 * <p>In: Focal lengths and their standard errors.
 *
 * <p>Out: A prior for the focal length and the distortion.
 *
 * <p>Uses: {@code geometry.fit}, {@code image} and {@code image.metadata}.
 */
package weltwright.camera.lens;
