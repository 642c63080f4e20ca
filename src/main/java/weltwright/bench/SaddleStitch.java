package weltwright.bench;

import weltwright.sheath.Seam;

/**
 * The thread of a seam that is sewn by the saddle stitch: one thread with a needle at each end, both of which pass every
 * hole. So for each stitch each half of the thread goes one pitch along and once through the stack:
 *
 * <p>2 · (stitches + back-stitches) · (pitch + stack) + tails.
 *
 * <p>For a stack as thick as the pitch that is four times the seam, which is the makers' rule for thin leather (common
 * practice; no source).
 *
 * @param seam its name
 * @param stitches from hole to hole
 * @param pitchMm from hole to hole
 * @param stackMm thickness of all that is sewn together, where it is thickest
 * @param backStitches sewn over again, at both ends together
 */
public record SaddleStitch(String seam, int stitches, double pitchMm, double stackMm, int backStitches) {
    /** To thread both needles and to hold on to. Common practice: a hand's breadth or two for each. */
    public static final double TAILS_MM = 2 * 150;

    /** One at each end of the thread. */
    public static final int NEEDLES = 2;

    static SaddleStitch of(Seam seam) {
        return new SaddleStitch(
                seam.name(), seam.stitchCount(), seam.pitchMm(), seam.thickestStackMm(), 2 * seam.backStitches());
    }

    public double seamMm() {
        return stitches * pitchMm;
    }

    /** Of the thread to cut. */
    public double threadMm() {
        return 2 * (stitches + backStitches) * (pitchMm + stackMm) + TAILS_MM;
    }
}
