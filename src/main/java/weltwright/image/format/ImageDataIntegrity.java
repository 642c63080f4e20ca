package weltwright.image.format;

import java.util.Optional;

/**
 * What reading through a picture file's coded data found, before the picture is decoded. Decoders make something of
 * damaged data, too, and say so only on the terminal, if at all.
 *
 * @param regular whether the data are as the standard has them to the last bit, so that a decoder has nothing to say;
 *     many a camera adds some bytes that harm nothing
 * @param damaged where the picture is not as it was taken, in pixels of the upright picture; empty where it is sound
 */
public record ImageDataIntegrity(boolean regular, Optional<PixelRectangle> damaged) {
    private static final ImageDataIntegrity SOUND = new ImageDataIntegrity(true, Optional.empty());

    /**
     * TIFF, BMP and WebP have nothing in them by which damage could be told.
     *
     * @throws IllegalArgumentException where nothing can be decoded
     */
    public static ImageDataIntegrity of(ImageFormat format, byte[] file, int orientation) {
        return switch (format) {
            case JPEG -> JpegValidator.of(file, orientation);
            case PNG -> {
                PngValidator.check(file);
                yield SOUND;
            }
            case TIFF, BMP, WEBP -> SOUND;
        };
    }
}
