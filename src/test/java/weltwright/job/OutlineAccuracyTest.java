package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.Silhouette;
import weltwright.trace.Trace;

class OutlineAccuracyTest {
    private static final Trace TRACE = TestJobs.full().trace().orElseThrow();
    private static final Silhouette FOUND = TRACE.silhouette();
    private static final double TRACED95_MM = TRACE.error().error95Mm();
    private static final Job TRACED = Job.begin(LocalDate.of(2024, 5, 6)).withTrace(TRACE);

    @Test
    void isThatOfTheTraceWhereNothingWasChanged() {
        OutlineAccuracy accuracy = OutlineAccuracy.of(TRACED).orElseThrow();
        assertThat(accuracy.error95Mm()).isCloseTo(TRACED95_MM, within(1e-12));
        assertThat(accuracy.byHand()).isZero();
        assertThat(accuracy.contradictionMm()).isZero();
        assertThat(OutlineAccuracy.of(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(FOUND)))
                .as("nothing was traced")
                .isEmpty();
    }

    /** An outline drawn by hand all round has the error of the hand: the variance of the mixture with weight 1. */
    @Test
    void isThatOfTheHandWhereAllWasDrawn() {
        Silhouette drawn = FOUND.withOutline(FOUND.outline().map(p -> p.times(1.2)));
        OutlineAccuracy accuracy =
                OutlineAccuracy.of(TRACED.withSilhouette(drawn)).orElseThrow();
        double byHand = accuracy.byHand();
        assertThat(byHand).isBetween(0.8, 1.0);
        assertThat(accuracy.error95Mm())
                .isCloseTo(
                        Math.sqrt((1 - byHand) * TRACED95_MM * TRACED95_MM
                                + byHand * OutlineAccuracy.HAND95_MM * OutlineAccuracy.HAND95_MM),
                        within(1e-12));
    }

    @Test
    void isAtLeastHalfOfWhatACaliperContradicts() {
        double width = CaliperMeasure.widthAt(FOUND, FOUND.landmarks().tip().x() - 40);
        double off = 2 * TRACED95_MM + 1;
        OutlineAccuracy contradicted = OutlineAccuracy.of(
                        TRACED.withCaliper(CaliperMeasure.width(40, width + off, FOUND)))
                .orElseThrow();
        assertThat(contradicted.contradictionMm()).isCloseTo(off, within(1e-6));
        assertThat(contradicted.error95Mm()).isCloseTo(off / 2, within(1e-6));
        OutlineAccuracy agreed = OutlineAccuracy.of(
                        TRACED.withCaliper(CaliperMeasure.width(40, width + TRACED95_MM, FOUND)))
                .orElseThrow();
        assertThat(agreed.contradictionMm()).isZero();
        assertThat(agreed.error95Mm()).isCloseTo(TRACED95_MM, within(1e-9));
    }
}
