package weltwright.assembly;

/** How fast a maker with some practice does a work. All figures are from memory. */
enum WorkRate {
    CUT_MM(2, 80),
    GROOVE_MM(1, 200),
    PUNCH_HOLES(1, 10),
    PRICK_HOLES(1, 20),
    BEVEL_MM(1, 100),
    SAND_MM(1, 60),
    BURNISH_MM(2, 40),
    TRIM_MM(3, 20),
    SEW_STITCHES(5, 2),
    DYE_MM2(5, 2000);

    private final double setUpMin;
    private final double perMin;

    WorkRate(double setUpMin, double perMin) {
        this.setUpMin = setUpMin;
        this.perMin = perMin;
    }

    /** Returns the time in minutes for an amount of work, in the unit that the name ends with. */
    double minutes(double amount) {
        return setUpMin + amount / perMin;
    }
}
