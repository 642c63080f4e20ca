package weltwright.units;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;

/**
 * A number without a unit that the user is asked for: what it is called and between which bounds it makes sense. Read
 * with a decimal point or a decimal comma.
 *
 * @param name what the maker calls it, without article: "number of welt layers"
 * @param least the least that is accepted
 * @param greatest the greatest that is accepted
 * @param whole whether it counts things
 */
public record NumberField(String name, double least, double greatest, boolean whole) {
    private static final Pattern PLAIN = Pattern.compile("-?(?:\\d{1,9}(?:[.,]\\d{0,15})?|[.,]\\d{1,15})");

    /** A number that need not be whole. */
    public static NumberField of(String name, double least, double greatest) {
        return new NumberField(name, least, greatest, false);
    }

    /** A number of things. */
    public static NumberField count(String name, int least, int greatest) {
        return new NumberField(name, least, greatest, true);
    }

    /** What was typed; throws {@link UserFacingException} that names the field and the text. */
    public double read(String typed) {
        String text = DigitNormalizer.ascii(typed).strip();
        if (!PLAIN.matcher(text).matches()) {
            throw new UserFacingException(
                    "The " + name + " cannot be read from " + LengthParser.quoted(typed) + ".", remedy());
        }
        return checked(Double.parseDouble(text.replace(',', '.')), LengthParser.quoted(typed));
    }

    /** What was typed, a whole number. */
    public int readCount(String typed) {
        return (int) read(typed);
    }

    /**
     * A number that comes from elsewhere than from typing, such as a file; throws {@link UserFacingException} out of
     * bounds.
     */
    public double checked(double number) {
        return checked(number, String.valueOf(number));
    }

    /** The same for a count. */
    public int checked(int count) {
        checked(count, String.valueOf(count));
        return count;
    }

    /** The bounds as the maker reads them: "1 to 6". */
    public String bounds() {
        return plain(least) + " to " + plain(greatest);
    }

    private double checked(double number, String given) {
        if (!(number >= least && number <= greatest) || (whole && number != Math.rint(number))) {
            throw new UserFacingException(
                    "The " + name + " is given as " + given + ", which cannot be right.", remedy());
        }
        return number;
    }

    private String remedy() {
        return "Give a " + (whole ? "whole " : "") + "number from " + bounds() + ".";
    }

    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }
}
