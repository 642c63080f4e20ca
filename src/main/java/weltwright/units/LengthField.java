package weltwright.units;

import java.math.RoundingMode;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * An input field for a length, with its name and bounds. Parses what the user types:
 *
 * <ul>
 *   <li>"19 mm", "1.9 cm", "0.75 in", with a decimal point or a decimal comma; a comma never groups thousands;
 *   <li>"3/4 in", "1 3/8\"", "1-3/8 in", "1⅜ in": fractions of an inch and mixed numbers;
 *   <li>"19": a number without a unit, in the caller's default unit;
 *   <li>for a thickness of leather also "8 oz" (8/64 in), and "7/8 oz" or "7-8 oz", which in the trade is the range
 *       from 7 to 8 oz and not a fraction; its middle is taken. "1/8 oz" is rejected: hides are not sold with so wide a
 *       range, and an eighth of an ounce is no thickness of leather.
 * </ul>
 *
 * <p>Digits of any script are accepted.
 *
 * @param name in files, the same in each language: "handle thickness"; {@link FieldWords} has its words
 * @param leastMm least accepted value, 0 or more
 * @param greatestMm greatest accepted value
 * @param leather whether it is a thickness of leather, which may be given in ounces
 */
public record LengthField(String name, double leastMm, double greatestMm, boolean leather) {
    private static final Messages TEXTS = Messages.of(LengthField.class);

    /** Separates the lengths of a list. A comma without a space after it is a decimal comma and separates nothing. */
    public static final Pattern SEPARATOR = Pattern.compile(";|,\\s|\\b(?:and|und)\\b");

    public LengthField {
        if (!(0 <= leastMm && leastMm <= greatestMm && greatestMm < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " from " + leastMm + " to " + greatestMm);
        }
    }

    /** A length that is not of leather. */
    public static LengthField of(String name, double leastMm, double greatestMm) {
        return new LengthField(name, leastMm, greatestMm, false);
    }

    /** A thickness of leather. */
    public static LengthField ofLeather(String name, double leastMm, double greatestMm) {
        return new LengthField(name, leastMm, greatestMm, true);
    }

    /** Parses a typed length, as {@link #readMm(String, LengthUnit)} with mm as the default unit. */
    public double readMm(String typed) {
        return readMm(typed, LengthUnit.MILLIMETRE);
    }

    /**
     * Parses a typed length.
     *
     * @param defaultUnit unit of a number without one
     * @return the length in mm
     * @throws UserFacingException if the text is not a length or out of bounds; the message has the field's name and
     *     the text
     */
    public double readMm(String typed, LengthUnit defaultUnit) {
        double mm = new LengthParser(this, typed).mm(defaultUnit);
        if (!within(mm)) {
            throw outOfBounds(LengthParser.quoted(typed));
        }
        return mm;
    }

    /**
     * Checks a length that was not typed, such as one from a file.
     *
     * @return {@code mm}
     * @throws UserFacingException if it is out of bounds or not a number
     */
    public double checkedMm(double mm) {
        if (!within(mm)) {
            throw outOfBounds(
                    Double.isFinite(mm) ? new Length(mm).inMillimetres() : TEXTS.text("length-field.not-a-number"));
        }
        return mm;
    }

    /**
     * The bounds for display: "3 mm to 60 mm (1/8 in to 2 23/64 in)". They are rounded inwards, so that each of them is
     * accepted as input.
     */
    public String bounds() {
        Length least = new Length(leastMm);
        Length greatest = new Length(greatestMm);
        return TEXTS.text(
                "length-field.to-to",
                least.inMillimetres(RoundingMode.CEILING),
                greatest.inMillimetres(RoundingMode.FLOOR),
                least.inInches(RoundingMode.CEILING),
                greatest.inInches(RoundingMode.FLOOR));
    }

    boolean within(double mm) {
        // Tolerates the rounding of a bound that is given in inches.
        double slack = 1e-9;
        return mm >= leastMm - slack && mm <= greatestMm + slack;
    }

    private UserFacingException outOfBounds(String given) {
        return new UserFacingException(
                TEXTS.text("length-field.the-is-given-as-which", FieldWords.of(name), given),
                TEXTS.text("length-field.give-a-length-from", bounds()));
    }
}
