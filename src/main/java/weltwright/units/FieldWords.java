package weltwright.units;

import weltwright.message.Messages;

/** The names of input fields in the user's language. */
public final class FieldWords {
    private static final Messages TEXTS = Messages.of(FieldWords.class);

    private FieldWords() {}

    /**
     * Returns the words for a field's name, which is the same in each language; the name itself where there are none.
     */
    public static String of(String name) {
        String key = "field." + name.replaceAll("\\W+", "-");
        return TEXTS.has(key) ? TEXTS.text(key) : name;
    }
}
