package weltwright.units;

/** Converts numbers typed in any script to the digits 0 to 9 and a decimal point. */
public final class DigitNormalizer {
    /** U+066B, the decimal separator of Arabic-Indic digits (Unicode, chapter 9.2). */
    private static final char ARABIC_DECIMAL_SEPARATOR = '\u066B';

    private DigitNormalizer() {}

    /**
     * Replaces every decimal digit of another script (general category Nd: Arabic-Indic, Devanagari, Thai, full width
     * and so on) by the ASCII digit of its value, and the Arabic decimal separator by a point. Removes format
     * characters (general category Cf) such as the marks of writing direction that keyboards of right-to-left scripts
     * add.
     */
    public static String ascii(String typed) {
        StringBuilder ascii = new StringBuilder();
        typed.codePoints().forEach(c -> {
            int type = Character.getType(c);
            if (type == Character.DECIMAL_DIGIT_NUMBER) {
                ascii.append(Character.digit(c, 10));
            } else if (c == ARABIC_DECIMAL_SEPARATOR) {
                ascii.append('.');
            } else if (type != Character.FORMAT) {
                ascii.appendCodePoint(c);
            }
        });
        return ascii.toString();
    }
}
