package weltwright.assembly;

import java.util.List;
import weltwright.sheath.pattern.Seam;

/**
 * Thread, needles and awl for a seam. The thread follows from the pitch, needle and awl from the thread, and how far
 * the awl must reach from the stack. All of it common practice, from memory; those who make needles number them
 * differently.
 */
public record SeamTools(Seam seam) {
    /** A thread is a fifth as thick as the stitch is long. */
    private static final double THREAD_TO_PITCH = 1.0 / 5;

    /** Waxed threads come so thick. */
    private static final List<Double> THREADS_MM = List.of(0.4, 0.6, 0.8, 1.0, 1.2);

    /** An awl's blade opens a hole so many times as wide as the thread, for two of them and two needles to pass. */
    private static final double AWL_TO_THREAD = 2.5;

    /** Of an awl's blade, beyond the stack: it has its full width only behind its point. */
    private static final double AWL_BEYOND_MM = 12;

    /** The diameter of the thread. */
    public double threadMm() {
        double wanted = seam.pitchMm() * THREAD_TO_PITCH;
        double nearest = THREADS_MM.get(0);
        for (double thread : THREADS_MM) {
            nearest = Math.abs(thread - wanted) < Math.abs(nearest - wanted) ? thread : nearest;
        }
        return nearest;
    }

    /** Harness needles, blunt: the thicker the thread, the lower their number. */
    public String needle() {
        double thread = threadMm();
        return thread <= 0.4
                ? "no. 6"
                : thread <= 0.6 ? "no. 4" : thread <= 0.8 ? "no. 2" : thread <= 1.0 ? "no. 1" : "no. 0";
    }

    /** How wide the blade of the awl is. */
    public double awlWidthMm() {
        return AWL_TO_THREAD * threadMm();
    }

    /** How long it is, at the least. */
    public double awlLengthMm() {
        return 5 * Math.ceil((seam.thickestStackMm() + AWL_BEYOND_MM) / 5);
    }
}
