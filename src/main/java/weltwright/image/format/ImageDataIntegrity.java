package weltwright.image.format;

import java.util.Optional;

/**
 * The result of checking the coded data of an image file before decoding it. Decoders decode damaged data as well and
 * report damage at most on the terminal.
 *
 * @param regular whether the data follow the standard to the last bit, so that a decoder prints no warning; some
 *     cameras append harmless bytes
 * @param damaged the smallest rectangle that holds all damage found, in pixels of the upright picture; empty where none
 *     was found
 */
public record ImageDataIntegrity(boolean regular, Optional<PixelRectangle> damaged) {
    private static final ImageDataIntegrity SOUND = new ImageDataIntegrity(true, Optional.empty());

    /**
     * Checks JPEG and PNG data, and the length of BMP data. TIFF and WebP carry no checksum or code that shows damage,
     * so they are reported as sound.
     *
     * @param orientation Exif orientation, 1 to 8
     * @throws IllegalArgumentException where nothing can be decoded
     */
    public static ImageDataIntegrity of(ImageFormat format, byte[] file, int orientation) {
        return switch (format) {
            case JPEG -> JpegValidator.of(file, orientation);
            case PNG -> {
                PngValidator.check(file);
                yield SOUND;
            }
            case BMP -> {
                BmpValidator.check(file);
                yield SOUND;
            }
            case TIFF, WEBP -> SOUND;
        };
    }
}
