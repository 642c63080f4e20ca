package weltwright.message;

/** Writes a length in a unit. */
public interface LengthFormat {
    /** Formats a length with its unit, as finely as it is worth: "19 mm", "3/4 in". */
    String format(double mm);

    /**
     * Formats a length with its unit.
     *
     * @param decimals of a mm; another unit is divided as finely as comes nearest to them
     */
    String format(double mm, int decimals);
}
