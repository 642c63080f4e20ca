package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Source: closed-form lengths on a blade 60 mm long and 20 mm wide, whose point has a right angle. */
class UncertainStretchTest {
    private static final double STEP_MM = 0.1;

    private static final Polyline BLADE = Polyline.closed(
            List.of(new Point(0, -10), new Point(50, -10), new Point(60, 0), new Point(50, 10), new Point(0, 10)));

    @Test
    void aWeakStretchIsFoundWhereverTheRingBegins() {
        Polyline ring = BLADE.resampled(STEP_MM);
        double[] certainty = certain(ring);
        int n = certainty.length;
        IntStream.range(n - 40, n + 60).forEach(i -> certainty[i % n] = 0);
        List<UncertainStretch> found = UncertainStretch.of(ring, certainty);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).along(BLADE).lengthMm()).isCloseTo(99 * STEP_MM, within(STEP_MM));
    }

    @Test
    void aShortGapIsBridgedAndAShortStretchLeftOut() {
        Polyline ring = BLADE.resampled(STEP_MM);
        double[] certainty = certain(ring);
        Arrays.fill(certainty, 50, 70, 0);
        Arrays.fill(certainty, 80, 100, 0);
        Arrays.fill(certainty, 200, 220, 0);
        List<UncertainStretch> found = UncertainStretch.of(ring, certainty);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).along(BLADE).lengthMm()).isCloseTo(49 * STEP_MM, within(STEP_MM));
    }

    /** A spur 2 mm long and 0.4 mm wide at the point was measured, and the outline does not have it. */
    @Test
    void aStretchThatTheOutlineCutsOffIsShort() {
        Polyline ring = Polyline.closed(List.of(
                        new Point(0, -10),
                        new Point(50, -10),
                        new Point(59.8, -0.2),
                        new Point(62, -0.2),
                        new Point(62, 0.2),
                        new Point(59.8, 0.2),
                        new Point(50, 10),
                        new Point(0, 10)))
                .resampled(STEP_MM);
        double[] certainty = certain(ring);
        for (int i = 0; i < certainty.length; i++) {
            certainty[i] = ring.points().get(i).x() > 60.4 ? 0 : 1;
        }
        List<UncertainStretch> found = UncertainStretch.of(ring, certainty);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).along(BLADE).lengthMm()).isBetween(0.1, 3.0);
    }

    private static double[] certain(Polyline ring) {
        double[] certainty = new double[ring.points().size()];
        Arrays.fill(certainty, 1);
        return certainty;
    }
}
