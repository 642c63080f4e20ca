package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import weltwright.error.UserFacingException;

/**
 * What a file held at one moment, so that a later change by somebody else can be seen. Times do not tell that: programs
 * that synchronise folders set them, and some file systems count them by two seconds.
 *
 * @param file the file
 * @param sha256 the SHA-256 of its content, in hexadecimal digits; empty where there was no such file
 */
public record FileVersion(Path file, Optional<String> sha256) {
    /** More than any file of the program's has; what is longer is compared by its beginning. */
    private static final long GREATEST_BYTES = 500_000_000;

    public FileVersion {
        Objects.requireNonNull(file);
        Objects.requireNonNull(sha256);
    }

    /** What the file holds now; throws {@link UserFacingException} where it cannot be read. */
    public static FileVersion of(Path file) {
        if (!Files.isRegularFile(file)) {
            return new FileVersion(file, Optional.empty());
        }
        MessageDigest digest = newDigest();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            byte[] buffer = new byte[1 << 16];
            long left = GREATEST_BYTES;
            int read = 0;
            while (read >= 0 && left > 0) {
                left -= read;
                read = in.read(buffer);
            }
        } catch (IOException e) {
            throw new UserFacingException(file + " cannot be read.", "Check that you may open it.", e);
        }
        return of(file, digest);
    }

    /** Of content that went through a digest of {@link #newDigest}. */
    static FileVersion of(Path file, MessageDigest digest) {
        return new FileVersion(file, Optional.of(HexFormat.of().formatHex(digest.digest())));
    }

    static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256"); // every Java platform has it (MessageDigest's class comment)
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    boolean sameContent(FileVersion other) {
        return sha256.equals(other.sha256);
    }
}
