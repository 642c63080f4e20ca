/**
 * Checks the data of an image file before it is decoded: kind, size, damage.
 *
 * <p>In: The bytes of a JPEG, PNG, TIFF, BMP or WebP file.
 *
 * <p>Out: Kind, size, and where the data are damaged.
 *
 * <p>Uses: {@code geometry.fit}.
 */
package weltwright.image.format;
