/**
 * Reads a photo that a user named, and gives its pixels and brightness.
 *
 * <p>In: The bytes of a photo file.
 *
 * <p>Out: A {@code Photo} without private metadata, and decoded pictures.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code io} and sub-packages of {@code image}; OpenCV.
 */
package weltwright.image;
