package weltwright.image;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.image.format.ImageDataIntegrity;
import weltwright.image.format.ImageFormat;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.MetadataStripper;
import weltwright.image.metadata.PhotoHeader;
import weltwright.io.InputFile;

/**
 * A picture as its file holds it, known to be of a kind and size that can be read, without what the file told of the
 * person who took it. Value semantics: the bytes are never changed. Only the file's header has been read, so the
 * picture itself may still turn out to be cut off.
 */
public final class Photo {
    /** Greater than any camera's file; less than what fits into memory beside its pixels. */
    private static final int GREATEST_BYTES = 200_000_000;

    private final String name;
    private final byte[] bytes;
    private final PhotoHeader header;
    private final Optional<CameraIdentity> camera;
    private @Nullable ImageDataIntegrity check;

    private Photo(String name, byte[] file) {
        this.name = Objects.requireNonNull(name);
        if (file.length > GREATEST_BYTES) {
            throw tooLarge(name);
        }
        PhotoHeader.Stripped stripped = PhotoHeader.stripped(name, file);
        this.bytes = stripped.bytes();
        this.header = stripped.header();
        this.camera = stripped.camera();
    }

    /** Reads a JPEG, PNG, TIFF, BMP or WebP file; throws {@link UserFacingException} where it cannot be used. */
    public static Photo read(Path file) {
        return new Photo(String.valueOf(file.getFileName()), InputFile.read(file, GREATEST_BYTES, "knife.jpg"));
    }

    /** The same from the bytes of such a file. {@code name} is what the user calls it. */
    public static Photo of(String name, byte[] file) {
        return new Photo(name, file.clone());
    }

    /** What the user calls it, for messages: mostly the name of its file. */
    public String name() {
        return name;
    }

    /**
     * The file's bytes, without what it told of the person who took it ({@link MetadataStripper}); a copy. The same
     * file gives the same bytes, and these give themselves.
     */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** How the file stores the picture. */
    public ImageFormat format() {
        return header.format();
    }

    /** Width upright, after the Exif orientation, in pixels. */
    public int widthPx() {
        return header.upright() ? header.storedWidthPx() : header.storedHeightPx();
    }

    /** Height upright, after the Exif orientation, in pixels. */
    public int heightPx() {
        return header.upright() ? header.storedHeightPx() : header.storedWidthPx();
    }

    /**
     * The Exif orientation, 1 to 8: how the stored rows and columns lie in the upright picture. 1 where the file says
     * nothing.
     */
    public int orientation() {
        return header.orientation();
    }

    /**
     * The focal length in 35 mm terms, by the diagonal, that the Exif data tell. Empty where they do not, and where the
     * picture was cropped since it was taken, for then what they tell no longer holds.
     */
    public OptionalDouble focal35mm() {
        return header.focal35mm();
    }

    /**
     * Whether it is a part of a larger photo, as far as its file and shape tell: then its middle is not where the lens
     * looked. A part of the shape that the whole had is not known for one.
     */
    public boolean isCutOut() {
        return header.cutOut();
    }

    /**
     * The camera that took it, where the file that was read names one. It is known to this object only, so that a
     * measured phone's lens can be found when a photo comes in: it is not among {@link #bytes}, nor in any file that is
     * made of them.
     */
    public Optional<CameraIdentity> camera() {
        return camera;
    }

    /**
     * What reading through the file's coded data finds, made when it is first asked for: a tenth of a second for 12
     * megapixels.
     *
     * @throws UserFacingException where nothing can be decoded from them
     */
    public synchronized ImageDataIntegrity check() {
        if (check == null) {
            try {
                check = ImageDataIntegrity.of(format(), bytes, orientation());
            } catch (IllegalArgumentException e) {
                throw new UserFacingException(
                        "The picture \"" + name + "\" is damaged and cannot be decoded.",
                        "Copy it from the camera again, or take another.",
                        e);
            }
        }
        return check;
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
        return name + ", " + widthPx() + " x " + heightPx() + " px";
    }

    private static UserFacingException tooLarge(String name) {
        return new UserFacingException(
                name + " is larger than " + GREATEST_BYTES / 1_000_000 + " MB.",
                "Save the photo as JPEG, which is smaller.");
    }
}
