package weltwright.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A length to be shown to a maker. Everywhere else in the program a length is a {@code double} of mm. */
public record Length(double mm) {
    /** The finest division of a maker's ruler: fractions of an inch are shown to it. */
    private static final int INCH_DIVISIONS = 64;

    /** In mm to a hundredth, without trailing zeros: "19 mm", "3.97 mm". */
    public String inMillimetres() {
        return inMillimetres(RoundingMode.HALF_UP);
    }

    /** The same, rounded to the hundredth that is asked for. */
    String inMillimetres(RoundingMode rounding) {
        return plain(BigDecimal.valueOf(mm).setScale(2, rounding)) + " mm";
    }

    /** In inches to the nearest sixty-fourth, in lowest terms: "3/8 in", "1 3/8 in", "2 in". */
    public String inInches() {
        return inInches(RoundingMode.HALF_UP);
    }

    /** In inches to the nearest sixteenth, as fine as a sheath is measured: "5 15/16 in". */
    public String inSixteenths() {
        return inInches(16, RoundingMode.HALF_UP);
    }

    /** The same, rounded to the sixty-fourth that is asked for. */
    String inInches(RoundingMode rounding) {
        return inInches(INCH_DIVISIONS, rounding);
    }

    /** @param parts of an inch to round to, a power of two */
    private String inInches(int parts, RoundingMode rounding) {
        long divisions = BigDecimal.valueOf(Math.abs(mm) / LengthUnit.INCH.inMm() * parts)
                .setScale(9, RoundingMode.HALF_UP) // 9.525 mm is 24 sixty-fourths, whatever its last bit says
                .setScale(0, rounding)
                .longValueExact();
        long whole = divisions / parts;
        long numerator = divisions % parts;
        String sign = mm < 0 && divisions > 0 ? "-" : "";
        if (numerator == 0) {
            return sign + whole + " in";
        }
        long common = Long.lowestOneBit(numerator); // the only factors of a power of two
        String fraction = numerator / common + "/" + parts / common;
        return sign + (whole == 0 ? fraction : whole + " " + fraction) + " in";
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
