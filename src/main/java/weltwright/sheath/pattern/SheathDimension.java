package weltwright.sheath.pattern;

/**
 * One of the main sizes of a sheath, for the maker to check against the leather and the belt.
 *
 * @param name what is measured, in a maker's words: "length without the belt loop"
 * @param lengthMm how long it is
 */
public record SheathDimension(String name, double lengthMm) {
    /** Of the sewn sheath, its belt loop left out. */
    public static final String LENGTH = "length of the sheath, throat to tip";

    public static final String LENGTH_WITH_LOOP = "length with the belt loop";
    public static final String WIDTH = "greatest width";

    /** From the throat to the middle of the strap round the handle, where there is one. */
    public static final String STRAP_ABOVE_THROAT = "strap's middle above the throat";
}
