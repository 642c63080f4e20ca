package weltwright.assembly;

import java.util.Comparator;
import java.util.List;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Seam;

/**
 * Selects thread, needles and awl for a seam: the thread that was chosen, else one by the pitch, needle and awl by the
 * thread, and the awl's length by the stack. Common practice, from memory; makers of needles number them differently.
 */
public record SeamTools(Seam seam) {
    private static final Messages TEXTS = Messages.of(SeamTools.class);

    /** Diameter of thread over length of stitch. */
    private static final double THREAD_TO_PITCH = 1.0 / 5;

    /** Diameters of waxed thread. */
    private static final List<Double> THREADS_MM = List.of(0.4, 0.6, 0.8, 1.0, 1.2);

    /** Width of the awl over diameter of thread, for two threads and two needles to pass. */
    private static final double AWL_TO_THREAD = 2.5;

    /** Length of the awl's blade beyond the stack, since it has its full width only behind its point. */
    private static final double AWL_BEYOND_MM = 12;

    /** Returns the diameter of the thread, in mm. */
    public double threadMm() {
        double wanted = seam.pitchMm() * THREAD_TO_PITCH;
        return seam.stitching()
                .threadMm()
                .orElseGet(() -> THREADS_MM.stream()
                        .min(Comparator.comparingDouble(thread -> Math.abs(thread - wanted)))
                        .orElseThrow());
    }

    /** Returns the number of a blunt harness needle, lower for thicker thread. */
    public String needle() {
        double thread = threadMm();
        int number = thread <= 0.4 ? 6 : thread <= 0.6 ? 4 : thread <= 0.8 ? 2 : thread <= 1.0 ? 1 : 0;
        return TEXTS.text("seam-tools.no", number);
    }

    /** Returns the width of the awl's blade, in mm. */
    public double awlWidthMm() {
        return AWL_TO_THREAD * threadMm();
    }

    /** Returns the least length of the awl's blade, in mm. */
    public double awlLengthMm() {
        return 5 * Math.ceil((seam.thickestStackMm() + AWL_BEYOND_MM) / 5);
    }
}
