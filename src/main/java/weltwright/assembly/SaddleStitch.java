package weltwright.assembly;

import weltwright.sheath.pattern.Seam;

/**
 * The thread of a seam that is sewn by the saddle stitch: one thread with a needle at each end, both of which pass
 * every hole. So for each stitch each half of the thread goes one pitch along and once through the stack, as thick as
 * it is there:
 *
 * <p>2 · Σ (pitch + stack) + tails, back-stitches counted as stitches where the stack is thickest.
 *
 * <p>For a stack as thick as the pitch that is four times the seam, which is the makers' rule for thin leather (common
 * practice; no source).
 */
public record SaddleStitch(Seam seam) {
    /** One at each end of the thread. */
    public static final int NEEDLES = 2;

    /** To thread a needle and to hold on to, for each. Common practice. */
    private static final double TAIL_MM = 150;

    /** Of the thread to cut. */
    public double threadMm() {
        double half = TAIL_MM;
        for (int stitch = 0; stitch < seam.stitchCount(); stitch++) {
            half += seam.pitchMm() + seam.stackMm(stitch);
        }
        half += 2 * seam.backStitches() * (seam.pitchMm() + seam.thickestStackMm());
        return NEEDLES * half;
    }

    /** The same, rounded up to a tenth of a metre, in metres. */
    public double metresToCut() {
        return Math.ceil(threadMm() / 100) / 10;
    }
}
