package weltwright.message;

import java.text.DecimalFormatSymbols;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A language in which the program has all of its words. It is that of the default locale, if there are such words. */
public enum Language {
    /** Its numbers are those of {@link Locale#ROOT}: a decimal point, no groups. */
    ENGLISH("en", Locale.ROOT),
    GERMAN("de", Locale.GERMAN);

    private final String tag;
    private final Locale locale;

    Language(String tag, Locale locale) {
        this.tag = tag;
        this.locale = locale;
    }

    /** Returns the language of the default locale if the program has it, else English. */
    public static Language current() {
        return of(Locale.getDefault().getLanguage()).orElse(ENGLISH);
    }

    /** Returns the language of a two-letter code of ISO 639; empty where the program does not have it. */
    public static Optional<Language> of(String tag) {
        return Arrays.stream(values()).filter(each -> each.tag.equals(tag)).findFirst();
    }

    /** Writes a decimal number as the current language does: digits and a point with its decimal separator instead. */
    public static String decimal(String plain) {
        return plain.replace(
                '.', DecimalFormatSymbols.getInstance(current().locale).getDecimalSeparator());
    }

    /** Returns its name in itself, with a capital letter: "Deutsch". */
    public String words() {
        String name = new Locale(tag).getDisplayLanguage(new Locale(tag));
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    /** Returns its two-letter code of ISO 639. */
    public String tag() {
        return tag;
    }

    /** Returns the locale of the words, and of the numbers and dates between them. */
    public Locale locale() {
        return locale;
    }

    /**
     * Makes this the language of the process, in the country of the system. To be called before anything is worded,
     * since words are kept.
     */
    public void select() {
        Locale.setDefault(new Locale.Builder()
                .setLanguage(tag)
                .setRegion(Locale.getDefault().getCountry())
                .build());
    }
}
