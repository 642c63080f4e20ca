package weltwright.sheath.pattern;

/** The part of a piece that a layer of a seam or of hardware lies in. */
public enum LayerPart {
    /** The piece has one part only. */
    WHOLE(""),
    FACE_HALF("face half"),
    BACK_HALF("back half"),
    BELOW_THROAT("below the throat"),
    TAIL("tail"),
    TONGUE("tongue"),
    /** Of a strap that is folded over the belt: the end that lies on the back. */
    INNER_END("inner end"),
    OUTER_END("outer end"),
    LONG_END("long end"),
    SHORT_END("short end"),
    FRONT("front"),
    FOLD("fold"),
    /** Of the strap round the handle: the arm that lies outside when the snap is closed. */
    OVER("over"),
    UNDER("under");

    private final String words;

    LayerPart(String words) {
        this.words = words;
    }

    /** Its name for the maker; empty for {@link #WHOLE}. */
    public String words() {
        return words;
    }

    /** Whether it is one half of a body that is folded round the spine. */
    public boolean isHalf() {
        return this == FACE_HALF || this == BACK_HALF;
    }
}
