package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A kind of file that the program writes, recognized by a pattern in its first {@value #HEAD_BYTES} bytes. A file is
 * replaced only by one of the same kind.
 */
public final class FileKind {
    private static final int HEAD_BYTES = 4096;

    private final String name;
    private final Predicate<String> head;

    private FileKind(String name, Predicate<String> head) {
        this.name = name;
        this.head = head;
    }

    /**
     * Defines a kind.
     *
     * @param name in messages, with its article: "a PDF"
     * @param pattern a regular expression of which the first bytes, decoded as ISO 8859-1, contain a match
     */
    public static FileKind of(String name, String pattern) {
        return new FileKind(name, Pattern.compile(pattern, Pattern.DOTALL).asPredicate());
    }

    /** The name in messages, with its article: "a PDF". */
    public String name() {
        return name;
    }

    /** Whether a file is of this kind or empty. */
    boolean mayReplace(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] first = in.readNBytes(HEAD_BYTES);
            return first.length == 0 || head.test(new String(first, StandardCharsets.ISO_8859_1));
        }
    }
}
