package weltwright.sheath;

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
}
