package weltwright.app.cli;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;
import weltwright.io.InputFile;
import weltwright.message.Messages;

/**
 * Reads options files, given as {@code @FILE}: a text with one option or one argument on each line.
 *
 * <ul>
 *   <li>{@code =} or white space separates an option from its value. The value is the rest of the line, including
 *       spaces and {@code #}; quotation marks around the value or the whole line are removed.
 *   <li>Empty lines and lines that begin with {@code #} are ignored.
 *   <li>The encoding is UTF-8, or UTF-16 with a byte-order mark; line ends of any system are accepted.
 * </ul>
 */
final class OptionsFile {
    private static final Messages TEXTS = Messages.of(OptionsFile.class);

    private static final int MAX_BYTES = 1_000_000;

    private static final Pattern OPTION = Pattern.compile("(?<name>--?[^\\s=]+)(?:\\s*=\\s*|\\s+)(?<value>.*)");

    /** Matches a second option on a line, which is an error. */
    private static final Pattern SECOND_OPTION = Pattern.compile("\\s--[a-z]");

    private OptionsFile() {}

    /** Returns the arguments with each {@code @FILE} replaced by the arguments in the file. */
    static String[] expand(String[] words) {
        List<String> expanded = new ArrayList<>();
        for (String word : words) {
            if (word.length() > 1 && word.charAt(0) == '@') {
                expanded.addAll(read(path(word.substring(1))));
            } else {
                expanded.add(word);
            }
        }
        return expanded.toArray(String[]::new);
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UserFacingException(
                    TEXTS.text("options-file.is-no-name-of-a", name),
                    TEXTS.text("options-file.check-the-name-of-the"),
                    e);
        }
    }

    private static List<String> read(Path file) {
        String text = decode(file, InputFile.read(file, MAX_BYTES, "knife.args"));
        List<String> words = new ArrayList<>();
        String[] lines = text.split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (!line.isEmpty() && line.charAt(0) != '#') {
                words.add(parseLine(line, file, i + 1));
            }
        }
        return words;
    }

    private static String parseLine(String line, Path file, int number) {
        String whole = unquote(line);
        Matcher option = OPTION.matcher(whole);
        if (!option.matches()) {
            return whole;
        }
        String value = option.group("value").strip();
        if (whole.equals(line)
                && unquote(value).equals(value)
                && SECOND_OPTION.matcher(" " + value).find()) {
            throw new UserFacingException(
                    TEXTS.text("options-file.line-of-holds-more-than", number, file),
                    TEXTS.text("options-file.write-each-on-a-line"));
        }
        return option.group("name") + "=" + unquote(value);
    }

    private static String unquote(String text) {
        char first = text.isEmpty() ? 0 : text.charAt(0);
        boolean quoted =
                text.length() > 1 && (first == '"' || first == '\'') && text.charAt(text.length() - 1) == first;
        return quoted ? text.substring(1, text.length() - 1).replace("\\" + first, String.valueOf(first)) : text;
    }

    /** Decodes a text by its byte-order mark (Unicode Standard, section 23.8); UTF-8 without one. */
    private static String decode(Path file, byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return decode(file, bytes, 2, StandardCharsets.UTF_16LE);
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return decode(file, bytes, 2, StandardCharsets.UTF_16BE);
        }
        return decode(file, bytes, startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0, StandardCharsets.UTF_8);
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static String decode(Path file, byte[] bytes, int from, Charset charset) {
        try {
            return charset.newDecoder()
                    .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new UserFacingException(
                    TEXTS.text("options-file.is-no-text-in-utf", file),
                    TEXTS.text("options-file.save-the-file-of-options"),
                    e);
        }
    }
}
