package weltwright.assembly;

import weltwright.sheath.pattern.Seam;

/**
 * Computes the thread for a seam in saddle stitch: one thread with a needle at each end, both of which pass every hole.
 * For each stitch each half of the thread takes one pitch and the thickness of the stack there:
 *
 * <p>2 · Σ (pitch + stack) + tails, back-stitches counted as stitches where the stack is thickest.
 *
 * <p>For a stack as thick as the pitch this is four times the seam, the rule for thin leather (common practice).
 */
public record SaddleStitch(Seam seam) {
    /** One at each end of the thread. */
    public static final int NEEDLES = 2;

    /** Length at each end, for the needle and to hold. Common practice. */
    private static final double TAIL_MM = 150;

    /** Returns the length of thread, in mm. */
    public double threadMm() {
        double half = TAIL_MM;
        for (int stitch = 0; stitch < seam.stitchCount(); stitch++) {
            half += seam.pitchMm() + seam.stackMm(stitch);
        }
        half += 2 * seam.stitching().backStitches() * (seam.pitchMm() + seam.thickestStackMm());
        return NEEDLES * half;
    }

    /** Returns the length of thread in metres, rounded up to a tenth. */
    public double metresToCut() {
        return Math.ceil(threadMm() / 100) / 10;
    }
}
