package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * Reads files that the user named. Rejects pipes and devices, which could block or never end, and files larger than a
 * bound.
 */
public final class InputFile {
    private static final Messages TEXTS = Messages.of(InputFile.class);

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
            throw new UserFacingException(
                    TEXTS.text("input-file.there-is-no-file", file),
                    TEXTS.text("input-file.check-its-name-and-folder"));
        }
        if (Files.isDirectory(file)) {
            throw new UserFacingException(
                    TEXTS.text("input-file.is-not-a-file-but", file),
                    TEXTS.text("input-file.name-the-file-itself-such", example));
        }
        if (!Files.isRegularFile(file)) {
            throw new UserFacingException(
                    TEXTS.text("input-file.is-not-a-file-but-a-pipe-or", file),
                    TEXTS.text("input-file.save-it-as-a-file", example));
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
                TEXTS.text("input-file.cannot-be-read", file), TEXTS.text("input-file.check-that-you-may-open"), cause);
    }

    private static UserFacingException tooLarge(Path file, long greatestBytes, String example) {
        return new UserFacingException(
                TEXTS.text("input-file.is-larger-than-which-no", file, size(greatestBytes), example),
                TEXTS.text("input-file.see-whether-it-is-the"));
    }

    private static String size(long bytes) {
        return bytes >= 1_000_000
                ? TEXTS.text("input-file.mb", bytes / 1_000_000)
                : TEXTS.text("input-file.kb", bytes / 1_000);
    }
}
