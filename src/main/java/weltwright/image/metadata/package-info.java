/**
 * Reads what a photo tells of camera, lens and orientation, and removes everything else that it tells of its owner.
 *
 * <p>In: The bytes of an image file.
 *
 * <p>Out: Focal length, orientation and camera; bytes without private metadata.
 *
 * <p>Uses: {@code error} and {@code image.format}; metadata-extractor.
 */
package weltwright.image.metadata;
