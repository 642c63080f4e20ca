package weltwright.photo;

import java.nio.file.Path;
import java.util.OptionalDouble;

/**
 * A picture as its file holds it, known to be of a kind and size that can be read. Value semantics: the bytes are never
 * changed.
 */
public final class Photo {
    /** Reads a JPEG, PNG, TIFF, BMP or WebP file; throws {@link weltwright.trouble.Trouble} where it cannot be used. */
    public static Photo read(Path file) {
        throw new UnsupportedOperationException();
    }

    /** The same from the bytes of such a file. {@code name} is what the user calls it. */
    public static Photo of(String name, byte[] bytes) {
        throw new UnsupportedOperationException();
    }

    public String name() {
        throw new UnsupportedOperationException();
    }

    /** The file's bytes; a copy. */
    public byte[] bytes() {
        throw new UnsupportedOperationException();
    }

    /** Width and height upright, after the Exif orientation, in pixels. */
    public int widthPx() {
        throw new UnsupportedOperationException();
    }

    public int heightPx() {
        throw new UnsupportedOperationException();
    }

    /** The focal length in 35 mm terms that the Exif data tell, if they do. */
    public OptionalDouble focal35mm() {
        throw new UnsupportedOperationException();
    }
}
