package weltwright.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import weltwright.message.Language;
import weltwright.message.LengthFormat;

/** The unit in which the user reads lengths, and in which a typed number without a unit is meant. */
public enum MeasureUnit implements LengthFormat {
    MILLIMETRE(LengthUnit.MILLIMETRE, "mm"),
    INCH(LengthUnit.INCH, "in");

    /** Greatest error of a length written as a sixty-fourth of an inch where the length itself is meant. */
    private static final double EXACT_MM = 0.005;

    private final LengthUnit unit;
    private final String abbreviation;

    MeasureUnit(LengthUnit unit, String abbreviation) {
        this.unit = unit;
        this.abbreviation = abbreviation;
    }

    /** Returns "mm" or "in". */
    public String abbreviation() {
        return abbreviation;
    }

    /** Returns the unit of a number that is typed without one. */
    public LengthUnit ofBareNumbers() {
        return unit;
    }

    /** Formats a length to a hundredth of a mm or a sixty-fourth of an inch: "19 mm", "3/4 in". */
    @Override
    public String format(double mm) {
        return this == INCH ? new Length(mm).inInches() : new Length(mm).inMillimetres();
    }

    /**
     * Formats a length to a number of decimals of a mm, or to the division of an inch that is nearest to them: a
     * sixteenth (1.6 mm) for none, a sixty-fourth (0.4 mm) for one, a thousandth (0.025 mm) for two.
     */
    @Override
    public String format(double mm, int decimals) {
        if (this == MILLIMETRE) {
            return String.format(Language.current().locale(), "%." + decimals + "f mm", mm);
        }
        return switch (decimals) {
            case 0 -> new Length(mm).inSixteenths();
            case 1 -> new Length(mm).inInches();
            default -> thousandths(mm);
        };
    }

    /** Formats a length as {@link #format(double, int)} does, without its unit, for a column that names it. */
    public String figures(double mm, int decimals) {
        return format(mm, decimals).replace(" " + abbreviation, "");
    }

    /**
     * Formats a length so that reading it again gives it to a hundredth of a mm or a thousandth of an inch: "19.05 mm",
     * "3/4 in", "0.748 in".
     */
    public String formatExactly(double mm) {
        if (this == MILLIMETRE) {
            return new Length(mm).inMillimetres();
        }
        double sixtyFourths = mm / LengthUnit.OUNCE.inMm();
        boolean fraction = Math.abs(sixtyFourths - Math.rint(sixtyFourths)) * LengthUnit.OUNCE.inMm() < EXACT_MM;
        return fraction ? new Length(mm).inInches() : thousandths(mm);
    }

    private static String thousandths(double mm) {
        BigDecimal inches = BigDecimal.valueOf(mm / LengthUnit.INCH.inMm()).setScale(3, RoundingMode.HALF_UP);
        return (inches.signum() == 0
                        ? "0"
                        : Language.decimal(inches.stripTrailingZeros().toPlainString())) + " in";
    }
}
