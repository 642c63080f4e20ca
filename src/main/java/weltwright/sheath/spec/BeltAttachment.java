package weltwright.sheath.spec;

/**
 * How the sheath is held on the belt.
 *
 * @param style what holds it
 * @param beltWidthMm of the belt that must pass
 * @param beltThicknessMm of that belt
 * @param strap of what the strap is cut, where there is one
 */
public record BeltAttachment(Style style, double beltWidthMm, double beltThicknessMm, StrapLeather strap) {
    /** A tail for a belt of 38 by 4 mm. */
    public static final BeltAttachment USUAL = new BeltAttachment(Style.TAIL, 38, 4);

    /** With a usual strap, where there is one. */
    public BeltAttachment(Style style, double beltWidthMm, double beltThicknessMm) {
        this(style, beltWidthMm, beltThicknessMm, StrapLeather.BELT);
    }

    public BeltAttachment with(Style other) {
        return new BeltAttachment(other, beltWidthMm, beltThicknessMm, strap);
    }

    public BeltAttachment withStrap(StrapLeather other) {
        return new BeltAttachment(style, beltWidthMm, beltThicknessMm, other);
    }

    /** What holds a sheath on the belt. */
    public enum Style {
        /** A tail of the back, folded down and sewn. */
        TAIL,
        /** A strap with round ends, folded over the belt and riveted to the back. */
        RIVETED_STRAP,
        /** The same, sewn to the back. */
        SEWN_STRAP,
        /** A strap over the belt, from which the sheath hangs by a ring. */
        HANGING_RING
    }
}
