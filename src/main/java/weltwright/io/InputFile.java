package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;

/**
 * Reads files that the user named. Rejects pipes and devices, which could block or never end, and files larger than a
 * bound.
 */
public final class InputFile {
    private InputFile() {}

    /**
     * Checks that a path is a readable regular file of bounded size.
     *
     * @param greatestBytes greatest size
     * @param example name of an acceptable file, for the message
     * @throws UserFacingException if it is missing, a folder, a pipe or a device, unreadable, or too large
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

    /**
     * Reads a file after {@link #check}.
     *
     * @throws UserFacingException for the reasons of {@link #check}, or if reading fails
     */
    public static byte[] read(Path file, int greatestBytes, String example) {
        check(file, greatestBytes, example);
        try (InputStream in = Files.newInputStream(file)) {
            // A file may grow after the check, and the files of /proc report a size of 0.
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
