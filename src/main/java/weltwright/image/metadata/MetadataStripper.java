package weltwright.image.metadata;

import com.drew.metadata.Metadata;
import weltwright.image.format.ImageFormat;

/**
 * Removes personal data from an image file: place, time, camera, owner, maker notes, comments, thumbnails, colour
 * profiles, and anything appended to the picture, such as a short film. The coded picture is copied unchanged.
 * {@link RetainedExif} lists the tags that are kept. Stripping is deterministic and idempotent.
 */
public final class MetadataStripper {
    private MetadataStripper() {}

    /**
     * Returns a stripped copy of a file.
     *
     * @param metadata the metadata of the file
     * @throws IllegalArgumentException where the file's structure is damaged
     */
    static byte[] strip(ImageFormat format, byte[] file, Metadata metadata) {
        TiffWriter exif = RetainedExif.addTo(new TiffWriter(), metadata);
        byte[] kept = exif.isEmpty() ? new byte[0] : exif.bytes();
        return switch (format) {
            case JPEG -> JpegMetadataStripper.strip(file, kept);
            case PNG -> PngMetadataStripper.strip(file, kept);
            case WEBP -> WebpMetadataStripper.strip(file, kept);
            case TIFF -> TiffMetadataStripper.strip(file, metadata);
            case BMP -> file; // the format has no metadata
        };
    }
}
