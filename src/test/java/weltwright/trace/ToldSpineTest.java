package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Polyline;
import weltwright.knife.OutlineSides;

/** Source: the true outline of a rendered knife, seen fourteen degrees aslant, whose spine is taken for its edge. */
class ToldSpineTest {
    /** Part of the blade, from the heel, on which it is compared. */
    private static final double FROM = 0.05;

    private static final double TO = 0.75;

    @Test
    void theBladeComesNearerToTheTruth() throws IOException {
        GroundTruthPhoto photo = GroundTruthPhoto.read(GroundTruthPhoto.SCENES, "tanto-paper-a4");
        TraceOutcome.Found found = TraceOutcome.of(photo).found().orElseThrow();
        assertThat(found.asksForEdge()).isTrue();
        assertThat(found.spineRight()).isFalse();
        boolean taken = found.trace().silhouette().spineOnLeft();
        double proposed = sideOffMm(photo, found.trace());
        double right = sideOffMm(photo, found.trace().withSpineOnLeft(!taken, photo.settings(photo.ground())));
        double wrong = sideOffMm(photo, found.trace().withSpineOnLeft(taken, photo.settings(photo.ground())));
        // Measured: 0.28, 0.11 and 0.34 mm; the bounds are a fifth more.
        assertThat(right).isLessThan(0.13).isLessThan(proposed / 2);
        assertThat(wrong).isGreaterThan(proposed);
    }

    /** How far the blade's worse side is off in the mean. */
    private static double sideOffMm(GroundTruthPhoto photo, Trace trace) {
        Polyline placed = trace.silhouette()
                .outline()
                .sampled(0.25)
                .map(photo.measure(trace).fit()::apply);
        OutlineSides sides = new OutlineSides(placed);
        OutlineSides truth = new OutlineSides(photo.outline());
        double blade = photo.number("blade_length");
        return Math.max(
                stations(blade).map(x -> sides.upper(x) - truth.upper(x)).average().stream()
                        .map(Math::abs)
                        .sum(),
                stations(blade).map(x -> sides.lower(x) - truth.lower(x)).average().stream()
                        .map(Math::abs)
                        .sum());
    }

    /** Places along the blade in the truth's frame, whose heel is on x = 0. */
    private static DoubleStream stations(double blade) {
        return DoubleStream.iterate(FROM * blade, x -> x < TO * blade, x -> x + 0.5);
    }
}
