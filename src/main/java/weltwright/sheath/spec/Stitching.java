package weltwright.sheath.spec;

/**
 * How the sheath is sewn, with a saddle stitch.
 *
 * @param marginMm from the stitch row to the outer edge
 * @param pitchMm from stitch to stitch, as the iron has it; 25.4 over the stitches per inch
 * @param backStitches how many stitches are sewn back over at either end of a seam, that it cannot come undone
 */
public record Stitching(double marginMm, double pitchMm, int backStitches) {
    /** 4 mm irons, 1/8 in from the edge, two stitches back: common practice for a belt knife. */
    public static final Stitching USUAL = new Stitching(25.4 / 8, 4, 2);

    /** Of an awl or a pricking iron for thread of 0.8 to 1 mm. Common practice; no source. */
    private static final double HOLE_MM = 1.2;

    /** A fine iron makes fine holes: no wider than this share of its pitch. Common practice; no source. */
    private static final double HOLE_TO_PITCH = 0.4;

    /** Diameter of a stitch hole. */
    public double holeMm() {
        return Math.min(HOLE_MM, HOLE_TO_PITCH * pitchMm);
    }
}
