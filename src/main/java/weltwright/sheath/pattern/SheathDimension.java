package weltwright.sheath.pattern;

/**
 * One of the main sizes of a sheath, for the maker to check against the leather and the belt.
 *
 * @param kind what is measured
 * @param lengthMm its length
 */
public record SheathDimension(Kind kind, double lengthMm) {
    /** What is measured of a sheath. */
    public enum Kind {
        /** Of the sewn sheath, its belt loop left out. */
        LENGTH("length of the sheath, throat to tip"),
        LENGTH_WITH_LOOP("length with the belt loop"),
        WIDTH("greatest width"),
        EDGE_THICKNESS("thickness of the sewn edge"),
        WELT_THICKNESS("thickness of the welt"),
        LOOP_WIDTH("width of the belt loop"),
        /** From the throat to the middle of the strap round the handle, where there is one. */
        STRAP_ABOVE_THROAT("strap's middle above the throat");

        private final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    /** Returns what is measured, in a maker's words. */
    public String name() {
        return kind.words;
    }
}
