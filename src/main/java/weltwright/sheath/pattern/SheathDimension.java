package weltwright.sheath.pattern;

import weltwright.message.Messages;

/**
 * One of the main sizes of a sheath, for the maker to check against the leather and the belt.
 *
 * @param kind what is measured
 * @param lengthMm its length
 */
public record SheathDimension(Kind kind, double lengthMm) {
    private static final Messages TEXTS = Messages.of(SheathDimension.class);

    /** What is measured of a sheath. */
    public enum Kind {
        /** Of the sewn sheath, its belt loop left out. */
        LENGTH(TEXTS.text("sheath-dimension.length-of-the-sheath-throat")),
        LENGTH_WITH_LOOP(TEXTS.text("sheath-dimension.length-with-the-belt-loop")),
        WIDTH(TEXTS.text("sheath-dimension.greatest-width")),
        EDGE_THICKNESS(TEXTS.text("sheath-dimension.thickness-of-the-sewn-edge")),
        WELT_THICKNESS(TEXTS.text("sheath-dimension.thickness-of-the-welt")),
        LOOP_WIDTH(TEXTS.text("sheath-dimension.width-of-the-belt-loop")),
        /** From the throat to the middle of the strap round the handle, where there is one. */
        STRAP_ABOVE_THROAT(TEXTS.text("sheath-dimension.strap-s-middle-above-the"));

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
