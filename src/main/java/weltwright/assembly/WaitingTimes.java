package weltwright.assembly;

/** How long work rests until it can go on, in minutes. All figures are from memory. */
final class WaitingTimes {
    /** Contact cement, until it does not stick to a finger: 10 to 15 minutes. */
    static final int CEMENT_DRIES_MIN = 15;

    /** Spirit dye, before it is rubbed out and burnished; overnight. Common practice. */
    static final int DYE_DRIES_MIN = 12 * 60;

    /** Dye on an edge. */
    static final int EDGE_DYE_DRIES_MIN = 60;

    /** Damp leather that was folded, overnight. Common practice. */
    static final int FOLD_DRIES_MIN = 12 * 60;

    /** From damping until the colour begins to return; it depends on leather and air. */
    static final int CASING_MIN = 30;

    /** Formed leather, before it is worked on. Common practice. */
    static final int FORM_DRIES_MIN = 24 * 60;

    /** Oil, before it is waxed and worn. */
    static final int OIL_SOAKS_MIN = 12 * 60;

    private WaitingTimes() {}
}
