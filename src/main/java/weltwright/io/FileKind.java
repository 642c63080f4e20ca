package weltwright.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A kind of file that the program writes, and how its first bytes tell that a file is of it. No file is written over
 * one of another kind.
 */
public final class FileKind {
    private static final int HEAD_BYTES = 4096;

    private final String words;
    private final Predicate<String> head;

    private FileKind(String words, Predicate<String> head) {
        this.words = words;
        this.head = head;
    }

    /**
     * A kind whose first {@value #HEAD_BYTES} bytes, taken as ISO 8859-1, contain a match of a pattern.
     *
     * @param words for messages, with its article: "a PDF"
     */
    public static FileKind of(String words, String pattern) {
        return new FileKind(words, Pattern.compile(pattern, Pattern.DOTALL).asPredicate());
    }

    /** What it is called in messages, with its article: "a PDF". */
    public String words() {
        return words;
    }

    /** Whether a file is of this kind, or is empty, so that nothing is lost by writing over it. */
    boolean mayReplace(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] first = in.readNBytes(HEAD_BYTES);
            return first.length == 0 || head.test(new String(first, StandardCharsets.ISO_8859_1));
        }
    }
}
