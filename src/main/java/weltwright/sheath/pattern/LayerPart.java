package weltwright.sheath.pattern;

import weltwright.message.Messages;

/** The part of a piece that a layer of a seam or of hardware lies in. */
public enum LayerPart {
    /** The piece has one part only. */
    WHOLE(""),
    FACE_HALF(Messages.of(LayerPart.class).text("layer-part.face-half")),
    BACK_HALF(Messages.of(LayerPart.class).text("layer-part.back-half")),
    BELOW_THROAT(Messages.of(LayerPart.class).text("layer-part.below-the-throat")),
    TAIL(Messages.of(LayerPart.class).text("layer-part.tail")),
    TONGUE(Messages.of(LayerPart.class).text("layer-part.tongue")),
    /** Of a strap that is folded over the belt: the end that lies on the back. */
    INNER_END(Messages.of(LayerPart.class).text("layer-part.inner-end")),
    OUTER_END(Messages.of(LayerPart.class).text("layer-part.outer-end")),
    LONG_END(Messages.of(LayerPart.class).text("layer-part.long-end")),
    SHORT_END(Messages.of(LayerPart.class).text("layer-part.short-end")),
    FRONT(Messages.of(LayerPart.class).text("layer-part.front")),
    FOLD(Messages.of(LayerPart.class).text("layer-part.fold")),
    /** Of the strap round the handle: the arm that lies outside when the snap is closed. */
    OVER(Messages.of(LayerPart.class).text("layer-part.over")),
    UNDER(Messages.of(LayerPart.class).text("layer-part.under"));

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
