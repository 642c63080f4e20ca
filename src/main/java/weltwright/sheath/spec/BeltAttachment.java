package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The choice of what holds the sheath on the belt.
 *
 * @param style what holds it
 * @param beltWidthMm width of the belt
 * @param beltThicknessMm thickness of the belt
 * @param strap leather of the strap, where there is one
 */
@RecordBuilder
public record BeltAttachment(Style style, double beltWidthMm, double beltThicknessMm, StrapLeather strap)
        implements BeltAttachmentBuilder.With {
    /** A tail for a belt of 38 by 4 mm. Common practice. */
    public static final BeltAttachment USUAL = new BeltAttachment(Style.TAIL, 38, 4);

    /** An attachment with the usual strap. */
    public BeltAttachment(Style style, double beltWidthMm, double beltThicknessMm) {
        this(style, beltWidthMm, beltThicknessMm, StrapLeather.BELT);
    }

    /** What holds a sheath on the belt. */
    public enum Style {
        /** A tail of the back, folded down and sewn. */
        TAIL,
        /** A strap with round ends, folded over the belt and riveted to the back. */
        RIVETED_STRAP,
        /** A strap with round ends, folded over the belt and sewn to the back. */
        SEWN_STRAP,
        /** A strap over the belt, from which the sheath hangs by a ring. */
        HANGING_RING
    }
}
