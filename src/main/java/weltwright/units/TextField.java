package weltwright.units;

import weltwright.error.UserFacingException;

/**
 * Words that the user is asked for: what they are called, and how long they may be. They are printed, so they hold no
 * control characters.
 *
 * @param name what the maker calls it, without article: "customer"
 * @param longest how many characters (code points of Unicode) it may have
 * @param manyLines whether line breaks and tabs are kept
 */
public record TextField(String name, int longest, boolean manyLines) {

    /** Words on one line. */
    public static TextField ofOneLine(String name, int longest) {
        return new TextField(name, longest, false);
    }

    /** Words on as many lines as one likes. */
    public static TextField ofManyLines(String name, int longest) {
        return new TextField(name, longest, true);
    }

    /** What was given, cleaned; throws {@link UserFacingException} that names the field where it is too long. */
    public String read(String given) {
        String clean = clean(given);
        int length = clean.codePointCount(0, clean.length());
        if (length > longest) {
            throw new UserFacingException(
                    "The text for " + name + " has " + length + " characters, and no more than " + longest
                            + " can be kept and printed.",
                    "Shorten it.");
        }
        return clean;
    }

    /**
     * The text without control characters and without halves of characters (unpaired surrogates). Line breaks of any
     * system become line feeds; on one line they become spaces, and so do tabs.
     */
    public String clean(String given) {
        StringBuilder clean = new StringBuilder();
        given.replaceAll("\r\n?|[\u0085\u2028\u2029]", "\n").codePoints().forEach(c -> {
            int type = Character.getType(c);
            if (c == '\n' || c == '\t') {
                clean.append(manyLines ? (char) c : ' ');
            } else if (type != Character.CONTROL && type != Character.SURROGATE) {
                clean.appendCodePoint(c);
            }
        });
        return clean.toString();
    }
}
