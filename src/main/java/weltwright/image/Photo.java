package weltwright.image;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.image.conversion.HeifConverter;
import weltwright.image.format.ImageDataIntegrity;
import weltwright.image.format.ImageFormat;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.MetadataStripper;
import weltwright.image.metadata.PhotoHeader;
import weltwright.io.InputFile;
import weltwright.message.Messages;

/**
 * A photo file, checked to be of a readable format and size, without the metadata that {@link MetadataStripper}
 * removes. Immutable; equal photos have equal names and bytes. Only the header has been read, so the coded picture may
 * still be damaged.
 */
public final class Photo {
    private static final Messages TEXTS = Messages.of(Photo.class);

    /**
     * The greatest file size that is accepted: larger than a camera's files, small enough for the memory beside the
     * decoded picture. Chosen by eye.
     */
    private static final int GREATEST_BYTES = 200_000_000;

    private final String name;
    private final byte[] bytes;
    private final PhotoHeader header;
    private final Optional<CameraIdentity> camera;
    private @Nullable ImageDataIntegrity integrity;

    private Photo(String name, byte[] file) {
        this.name = Objects.requireNonNull(name);
        if (file.length > GREATEST_BYTES) {
            throw tooLarge(name);
        }
        byte[] readable = HeifConverter.isHeif(file)
                ? HeifConverter.standard().toJpeg(name, file).orElse(file)
                : file;
        PhotoHeader.Stripped stripped = PhotoHeader.stripped(name, readable);
        this.bytes = stripped.bytes();
        this.header = stripped.header();
        this.camera = stripped.camera();
    }

    /**
     * Reads a JPEG, PNG, TIFF, BMP or WebP file, or a HEIF file where the system has a program that converts it.
     *
     * @throws UserFacingException where the file cannot be read or used
     */
    public static Photo read(Path file) {
        return new Photo(String.valueOf(file.getFileName()), InputFile.read(file, GREATEST_BYTES, "knife.jpg"));
    }

    /**
     * Makes a photo of a file's bytes.
     *
     * @param name name of the photo, for messages
     * @throws UserFacingException where the bytes cannot be used
     */
    public static Photo of(String name, byte[] file) {
        return new Photo(name, file.clone());
    }

    /** Returns the name for messages, as a rule the file's name. */
    public String name() {
        return name;
    }

    /** Returns a copy of the stripped file's bytes. {@link #of} gives an equal photo for them. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Returns the file format. */
    public ImageFormat format() {
        return header.format();
    }

    /** Returns the width of the upright picture, in pixels. */
    public int widthPx() {
        return header.isTransposed() ? header.storedHeightPx() : header.storedWidthPx();
    }

    /** Returns the height of the upright picture, in pixels. */
    public int heightPx() {
        return header.isTransposed() ? header.storedWidthPx() : header.storedHeightPx();
    }

    /** Returns the Exif orientation, 1 to 8; 1 where the file states none. */
    public int orientation() {
        return header.orientation();
    }

    /**
     * Returns the focal length in 35 mm terms, by the diagonal, from the Exif data. Empty where they do not state it,
     * and where the picture was cropped, since the value then no longer applies.
     */
    public OptionalDouble focal35mm() {
        return header.focal35mm();
    }

    /**
     * Whether the picture is known or suspected to be cropped, so that its centre is not the lens's. A crop that keeps
     * the aspect ratio is not noticed where Exif does not state the original size.
     */
    public boolean isCutOut() {
        return header.cutOut();
    }

    /**
     * Returns the camera named by the file that was read. Only this object holds it, to find a calibrated lens: neither
     * {@link #bytes} nor any saved file contains it.
     */
    public Optional<CameraIdentity> camera() {
        return camera;
    }

    /**
     * Returns the result of checking the coded data, computed on the first call. That takes 0.1 s for 12 megapixels.
     *
     * @throws UserFacingException where nothing can be decoded
     */
    public synchronized ImageDataIntegrity integrity() {
        if (integrity == null) {
            try {
                integrity = ImageDataIntegrity.of(format(), bytes, orientation());
            } catch (IllegalArgumentException e) {
                throw new UserFacingException(
                        TEXTS.text("photo.the-picture-is-damaged-and", name),
                        TEXTS.text("photo.copy-it-from-the-camera"),
                        e);
            }
        }
        return integrity;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Photo photo && name.equals(photo.name) && Arrays.equals(bytes, photo.bytes);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return TEXTS.text("photo.x-px", name, widthPx(), heightPx());
    }

    private static UserFacingException tooLarge(String name) {
        return new UserFacingException(
                TEXTS.text("photo.is-larger-than-mb", name, GREATEST_BYTES / 1_000_000),
                TEXTS.text("photo.save-the-photo-as-jpeg"));
    }
}
