package weltwright.message;

import java.text.DecimalFormatSymbols;
import java.util.Locale;

/** A language in which the program has all of its words. It is chosen by {@link Locale#setDefault}. */
public enum Language {
    /** Its numbers are those of {@link Locale#ROOT}: a decimal point, no groups. */
    ENGLISH(Locale.ROOT);

    private final Locale locale;

    Language(Locale locale) {
        this.locale = locale;
    }

    /** Returns the language of the default locale if the program has it, else English. */
    public static Language current() {
        for (Language each : values()) {
            if (each.locale.getLanguage().equals(Locale.getDefault().getLanguage())) {
                return each;
            }
        }
        return ENGLISH;
    }

    /** Writes a decimal number as the current language does: digits and a point with its decimal separator instead. */
    public static String decimal(String plain) {
        return plain.replace(
                '.', DecimalFormatSymbols.getInstance(current().locale).getDecimalSeparator());
    }

    /** Returns the locale of the words, and of the numbers and dates between them. */
    public Locale locale() {
        return locale;
    }
}
