package weltwright.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import weltwright.message.Language;

/** Formats a length for display, in mm or inches. Elsewhere in the program a length is a {@code double} in mm. */
public record Length(double mm) {
    /** Divisions of an inch on a fine ruler; the ounce of leather is one of them. Common practice. */
    private static final int INCH_DIVISIONS = 64;

    /** In mm rounded to a hundredth, without trailing zeros: "19 mm", "3.97 mm". */
    public String inMillimetres() {
        return inMillimetres(RoundingMode.HALF_UP);
    }

    String inMillimetres(RoundingMode rounding) {
        return plain(BigDecimal.valueOf(mm).setScale(2, rounding)) + " mm";
    }

    /** In inches rounded to a sixty-fourth, in lowest terms: "3/8 in", "1 3/8 in", "2 in". */
    public String inInches() {
        return inInches(RoundingMode.HALF_UP);
    }

    /** In inches rounded to a sixteenth, the precision to which a sheath is measured: "5 15/16 in". */
    public String inSixteenths() {
        return inInches(16, RoundingMode.HALF_UP);
    }

    String inInches(RoundingMode rounding) {
        return inInches(INCH_DIVISIONS, rounding);
    }

    /** @param parts divisions of an inch to round to, a power of two */
    private String inInches(int parts, RoundingMode rounding) {
        long divisions = BigDecimal.valueOf(Math.abs(mm) / LengthUnit.INCH.inMm() * parts)
                .setScale(9, RoundingMode.HALF_UP) // removes the error of the division: 9.525 mm is 24 sixty-fourths
                .setScale(0, rounding)
                .longValueExact();
        long whole = divisions / parts;
        long numerator = divisions % parts;
        String sign = mm < 0 && divisions > 0 ? "-" : "";
        if (numerator == 0) {
            return sign + whole + " in";
        }
        long common = Long.lowestOneBit(numerator); // greatest common divisor with a power of two
        String fraction = numerator / common + "/" + parts / common;
        return sign + (whole == 0 ? fraction : whole + " " + fraction) + " in";
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0
                ? "0"
                : Language.decimal(number.stripTrailingZeros().toPlainString());
    }
}
