package weltwright.assembly;

/** Estimated times of operations for a maker with some practice. All figures are from memory. */
final class OperationTimes {
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

    private static final double CUT_MM_PER_MIN = 80;
    private static final double GROOVE_MM_PER_MIN = 200;
    private static final double HOLES_PER_MIN = 10;
    private static final double PRICKED_PER_MIN = 20;
    private static final double BEVEL_MM_PER_MIN = 100;
    private static final double SAND_MM_PER_MIN = 60;
    private static final double BURNISH_MM_PER_MIN = 40;
    private static final double TRIM_MM_PER_MIN = 20;
    private static final double STITCHES_PER_MIN = 2;
    private static final double DYED_MM2_PER_MIN = 2000;

    private OperationTimes() {}

    static double cut(double mm) {
        return 2 + mm / CUT_MM_PER_MIN;
    }

    static double groove(double mm) {
        return 1 + mm / GROOVE_MM_PER_MIN;
    }

    static double punch(int holes) {
        return 1 + holes / HOLES_PER_MIN;
    }

    static double prick(int holes) {
        return 1 + holes / PRICKED_PER_MIN;
    }

    static double bevel(double mm) {
        return 1 + mm / BEVEL_MM_PER_MIN;
    }

    static double sand(double mm) {
        return 1 + mm / SAND_MM_PER_MIN;
    }

    static double burnish(double mm) {
        return 2 + mm / BURNISH_MM_PER_MIN;
    }

    static double trim(double mm) {
        return 3 + mm / TRIM_MM_PER_MIN;
    }

    static double stitch(int stitches) {
        return 5 + stitches / STITCHES_PER_MIN;
    }

    static double dye(double mm2) {
        return 5 + mm2 / DYED_MM2_PER_MIN;
    }
}
