package weltwright.sheath;

/**
 * How the sheath is held on the belt.
 *
 * @param style what holds it
 * @param beltWidthMm of the belt that must pass
 * @param beltThicknessMm of that belt
 * @param strap of what the strap is cut, where there is one
 */
public record BeltHold(Style style, double beltWidthMm, double beltThicknessMm, StrapLeather strap) {
    /** A tail for a belt of 38 by 4 mm. */
    public static final BeltHold USUAL = new BeltHold(Style.TAIL, 38, 4);

    /** With a usual strap, where there is one. */
    public BeltHold(Style style, double beltWidthMm, double beltThicknessMm) {
        this(style, beltWidthMm, beltThicknessMm, StrapLeather.BELT);
    }

    public BeltHold with(Style other) {
        return new BeltHold(other, beltWidthMm, beltThicknessMm, strap);
    }

    public BeltHold withStrap(StrapLeather other) {
        return new BeltHold(style, beltWidthMm, beltThicknessMm, other);
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
