package weltwright.units;

import java.math.RoundingMode;
import weltwright.error.UserFacingException;

/**
 * A length that the user is asked for: what it is called and between which bounds it makes sense. Reads what is typed:
 *
 * <ul>
 *   <li>"19 mm", "1.9 cm", "0.75 in", with a decimal point or a decimal comma, which never groups thousands;
 *   <li>"3/4 in", "1 3/8\"", "1-3/8 in", "1⅜ in": fractions of an inch, whole and mixed;
 *   <li>"19": a bare number, in the unit that the caller says;
 *   <li>where it is leather, "8 oz" (8/64 in) and "7/8 oz" or "7-8 oz", which in the trade is a range from 7 to 8 oz
 *       and not a fraction: its middle. "1/8 oz" is refused: no side runs from 1 to 8 oz, and an eighth of an ounce is
 *       none.
 * </ul>
 *
 * <p>Digits may be those of any script.
 *
 * @param name what the maker calls it, without article: "handle thickness"
 * @param leastMm the least that is accepted, 0 or more
 * @param greatestMm the greatest that is accepted
 * @param leather whether it is a thickness of leather, and so may be given in ounces
 */
public record LengthField(String name, double leastMm, double greatestMm, boolean leather) {

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

    /**
     * What was typed, in mm; a bare number is taken as mm. Throws {@link UserFacingException} that names the field and
     * the text.
     */
    public double readMm(String typed) {
        return readMm(typed, LengthUnit.MILLIMETRE);
    }

    /**
     * What was typed, in mm.
     *
     * @param bare the unit of a number that is typed without one
     * @throws UserFacingException that names the field and what was typed, where that is no length or lies out of
     *     bounds
     */
    public double readMm(String typed, LengthUnit bare) {
        double mm = new LengthParser(this, typed).mm(bare);
        if (!within(mm)) {
            throw outOfBounds(LengthParser.quoted(typed));
        }
        return mm;
    }

    /**
     * A length that comes from elsewhere than from typing, such as a file; throws {@link UserFacingException} out of
     * bounds.
     */
    public double checkedMm(double mm) {
        if (!within(mm)) {
            throw outOfBounds(Double.isFinite(mm) ? new Length(mm).inMillimetres() : "not a number");
        }
        return mm;
    }

    /**
     * The bounds as the maker reads them: "3 mm to 60 mm (1/8 in to 2 23/64 in)". Where they are rounded, they are
     * rounded inwards, so that each of them is accepted when it is typed.
     */
    public String bounds() {
        Length least = new Length(leastMm);
        Length greatest = new Length(greatestMm);
        return least.inMillimetres(RoundingMode.CEILING) + " to " + greatest.inMillimetres(RoundingMode.FLOOR) + " ("
                + least.inInches(RoundingMode.CEILING) + " to " + greatest.inInches(RoundingMode.FLOOR) + ")";
    }

    boolean within(double mm) {
        // A bound given in inches must not be refused for a last bit.
        double slack = 1e-9;
        return mm >= leastMm - slack && mm <= greatestMm + slack;
    }

    private UserFacingException outOfBounds(String given) {
        return new UserFacingException(
                "The " + name + " is given as " + given + ", which cannot be right.",
                "Give a length from " + bounds() + ".");
    }
}
