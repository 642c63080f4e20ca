package weltwright.message;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a line may be broken: at spaces, but not between a number and its unit. */
public final class LineBreaks {
    private static final String UNIT_AFTER_NUMBER = "(?<=\\d\\s)(?:mm|cm|m|in|oz|h|min|%)(?![\\p{L}\\d])";

    private static final Pattern SPACES = Pattern.compile("\\s+(?!" + UNIT_AFTER_NUMBER + ")");

    private LineBreaks() {}

    /** Returns the parts of a text between which a line may be broken, without the spaces between them. */
    public static String[] parts(String text) {
        return SPACES.split(text, 0);
    }

    /**
     * Returns the last place up to another at which a line may be broken, or that place itself where there is none.
     *
     * @param at a place in the text, or its length
     */
    public static int upTo(int at, CharSequence text) {
        int last = at;
        Matcher spaces = SPACES.matcher(text);
        while (spaces.find() && spaces.end() <= at) {
            last = spaces.end();
        }
        return last;
    }
}
