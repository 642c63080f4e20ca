package weltwright.units;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;
import weltwright.message.Language;
import weltwright.message.Messages;

/**
 * An input field for a number without a unit, with its name and bounds. A decimal point and a decimal comma are
 * accepted.
 *
 * @param name in files, the same in each language: "number of welt layers"; {@link FieldWords} has its words
 * @param least least accepted value
 * @param greatest greatest accepted value
 * @param whole whether only integers are accepted
 */
public record NumberField(String name, double least, double greatest, boolean whole) {
    private static final Messages TEXTS = Messages.of(NumberField.class);

    private static final Pattern PLAIN = Pattern.compile("-?(?:\\d{1,9}(?:[.,]\\d{0,15})?|[.,]\\d{1,15})");

    /** A field for a real number. */
    public static NumberField of(String name, double least, double greatest) {
        return new NumberField(name, least, greatest, false);
    }

    /** A field for an integer. */
    public static NumberField count(String name, int least, int greatest) {
        return new NumberField(name, least, greatest, true);
    }

    /**
     * Parses a typed number.
     *
     * @throws UserFacingException if the text is not a number or out of bounds; the message has the field's name and
     *     the text
     */
    public double read(String typed) {
        String text = DigitNormalizer.ascii(typed).strip();
        if (!PLAIN.matcher(text).matches()) {
            throw new UserFacingException(
                    TEXTS.text("number-field.the-cannot-be-read-from", FieldWords.of(name), LengthParser.quoted(typed)),
                    remedy());
        }
        return checked(Double.parseDouble(text.replace(',', '.')), LengthParser.quoted(typed));
    }

    /** Parses a typed integer, as {@link #read}. */
    public int readCount(String typed) {
        return (int) read(typed);
    }

    /**
     * Checks a number that was not typed, such as one from a file.
     *
     * @return {@code number}
     * @throws UserFacingException if it is out of bounds
     */
    public double checked(double number) {
        return checked(number, String.valueOf(number));
    }

    /** Checks an integer, as {@link #checked(double)}. */
    public int checked(int count) {
        checked(count, String.valueOf(count));
        return count;
    }

    /** The bounds for display: "1 to 6". */
    public String bounds() {
        return TEXTS.text("number-field.to", plain(least), plain(greatest));
    }

    private double checked(double number, String given) {
        if (!(number >= least && number <= greatest) || (whole && number != Math.rint(number))) {
            throw new UserFacingException(
                    TEXTS.text("number-field.the-is-given-as-which", FieldWords.of(name), given), remedy());
        }
        return number;
    }

    private String remedy() {
        return whole
                ? TEXTS.text("number-field.give-a-whole-number-from", bounds())
                : TEXTS.text("number-field.give-a-number-from", bounds());
    }

    private static String plain(double number) {
        return Language.decimal(BigDecimal.valueOf(number).stripTrailingZeros().toPlainString());
    }
}
