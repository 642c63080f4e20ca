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
import weltwright.message.Messages;

/**
 * The content of a file at one time, by its hash, to detect a later change by another process. Modification times do
 * not suffice: programs that synchronize folders set them, and FAT stores them to two seconds.
 *
 * @param file its path
 * @param sha256 SHA-256 of its content in hexadecimal digits; empty if it did not exist
 */
public record FileVersion(Path file, Optional<String> sha256) {
    private static final Messages TEXTS = Messages.of(FileVersion.class);

    /** Of a longer file only the beginning is hashed; more than any file that the program writes. */
    private static final long GREATEST_BYTES = 500_000_000;

    public FileVersion {
        Objects.requireNonNull(file);
        Objects.requireNonNull(sha256);
    }

    /**
     * The current version of a file.
     *
     * @throws UserFacingException if it cannot be read
     */
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
            throw new UserFacingException(
                    TEXTS.text("file-version.cannot-be-read", file),
                    TEXTS.text("file-version.check-that-you-may-open"),
                    e);
        }
        return of(file, digest);
    }

    /** The version whose content a digest of {@link #newDigest} has processed. */
    static FileVersion of(Path file, MessageDigest digest) {
        return new FileVersion(file, Optional.of(HexFormat.of().formatHex(digest.digest())));
    }

    static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256"); // required of every Java platform, see MessageDigest
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    boolean sameContent(FileVersion other) {
        return sha256.equals(other.sha256);
    }
}
