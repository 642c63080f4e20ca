package weltwright.units;

import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * An input field for text, with its name and greatest length. The text is printed, so control characters are removed.
 *
 * @param name in files, the same in each language: "customer"; {@link FieldWords} has its words
 * @param longest greatest number of Unicode code points
 * @param multiline whether line breaks and tabs are kept
 */
public record TextField(String name, int longest, boolean multiline) {
    private static final Messages TEXTS = Messages.of(TextField.class);

    /** A field for one line of text. */
    public static TextField singleLine(String name, int longest) {
        return new TextField(name, longest, false);
    }

    /** A field for any number of lines. */
    public static TextField multiline(String name, int longest) {
        return new TextField(name, longest, true);
    }

    /**
     * The text as {@link #clean} returns it.
     *
     * @throws UserFacingException if it is too long; the message has the field's name
     */
    public String read(String given) {
        String clean = clean(given);
        int length = clean.codePointCount(0, clean.length());
        if (length > longest) {
            throw new UserFacingException(
                    TEXTS.text("text-field.the-text-for-has-characters", FieldWords.of(name), length, longest),
                    TEXTS.text("text-field.shorten-it"));
        }
        return clean;
    }

    /**
     * Removes control characters and unpaired surrogates. Line breaks of any system become line feeds; in a field of
     * one line, line breaks and tabs become spaces.
     */
    public String clean(String given) {
        StringBuilder clean = new StringBuilder();
        given.replaceAll("\r\n?|[\u0085\u2028\u2029]", "\n").codePoints().forEach(c -> {
            int type = Character.getType(c);
            if (c == '\n' || c == '\t') {
                clean.append(multiline ? (char) c : ' ');
            } else if (type != Character.CONTROL && type != Character.SURROGATE) {
                clean.appendCodePoint(c);
            }
        });
        return clean.toString();
    }
}
