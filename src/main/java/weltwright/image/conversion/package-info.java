/**
 * Conversion of the picture formats of phones by programs of the operating system.
 *
 * <p>In: The bytes of a HEIF file.
 *
 * <p>Out: The bytes of a JPEG file.
 *
 * <p>Uses: {@code error}.
 */
package weltwright.image.conversion;
