package weltwright.image.metadata;

import com.drew.metadata.Metadata;
import weltwright.image.format.ImageFormat;

/**
 * Takes out of a picture file what tells of the person who took it: place, time, camera, owner, the camera's notes,
 * comments, thumbnails, colour profiles, and whatever stands behind the picture, such as a short film. The picture
 * itself is not encoded anew; its bytes stay as they are. {@link RetainedExif} says what stays. The same file gives the
 * same bytes, and what has been stripped stays as it is.
 */
public final class MetadataStripper {
    private MetadataStripper() {}

    /**
     * @param metadata what the file tells of itself
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
            case BMP -> file; // it has no place for them
        };
    }
}
