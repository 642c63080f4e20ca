package weltwright.units;

/** Numbers as any keyboard types them, put into the digits 0 to 9 and the decimal point of this program. */
public final class DigitNormalizer {
    /** U+066B, the decimal separator of Arabic-Indic digits (Unicode, chapter 9.2). */
    private static final char ARABIC_DECIMAL_SEPARATOR = '\u066B';

    private DigitNormalizer() {}

    /**
     * Replaces every decimal digit of another script (general category Nd: Arabic-Indic, Devanagari, Thai, full width
     * and so on) by the ASCII digit of its value, and the Arabic decimal separator by a point. Removes invisible
     * characters that set the direction of writing (general category Cf), which keyboards of right-to-left scripts add.
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
