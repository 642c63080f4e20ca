package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;

/**
 * Reads a file that somebody named. Whatever it turns out to be, reading it never waits for a pipe, never goes on
 * without end, and never takes more memory than a bound that the caller gives.
 */
public final class InputFile {
    private InputFile() {}

    /**
     * Makes sure that it can be read: that it is there, is a file and no folder, pipe or device, and is no larger than
     * it may be.
     *
     * @param example the name of a file such as is wanted, for the message
     * @throws UserFacingException that says which of these it is not
     */
    public static void check(Path file, long greatestBytes, String example) {
        if (Files.notExists(file)) {
            throw new UserFacingException("There is no file " + file + ".", "Check its name and folder.");
        }
        if (Files.isDirectory(file)) {
            throw new UserFacingException(
                    file + " is not a file but a folder.", "Name the file itself, such as " + example + ".");
        }
        if (!Files.isRegularFile(file)) {
            throw new UserFacingException(
                    file + " is not a file but a pipe or a device.", "Save it as a file, such as " + example + ".");
        }
        if (!Files.isReadable(file)) {
            throw unreadable(file, null);
        }
        try {
            if (Files.size(file) > greatestBytes) {
                throw tooLarge(file, greatestBytes, example);
            }
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** Its bytes, checked as {@link #check} does; throws {@link UserFacingException} where it cannot be read, too. */
    public static byte[] read(Path file, int greatestBytes, String example) {
        check(file, greatestBytes, example);
        try (InputStream in = Files.newInputStream(file)) {
            // The bound is kept on what is read, too: files grow, and some that the system makes up say that they are
            // empty.
            byte[] bytes = in.readNBytes(greatestBytes + 1);
            if (bytes.length > greatestBytes) {
                throw tooLarge(file, greatestBytes, example);
            }
            return bytes;
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private static UserFacingException unreadable(Path file, @Nullable IOException cause) {
        return new UserFacingException(
                file + " cannot be read.", "Check that you may open it, or copy it to this computer.", cause);
    }

    private static UserFacingException tooLarge(Path file, long greatestBytes, String example) {
        return new UserFacingException(
                file + " is larger than " + size(greatestBytes) + ", which no file such as " + example + " is.",
                "See whether it is the right one.");
    }

    private static String size(long bytes) {
        return bytes >= 1_000_000 ? bytes / 1_000_000 + " MB" : bytes / 1_000 + " kB";
    }
}
