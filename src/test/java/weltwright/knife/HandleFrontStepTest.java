package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** A handle 24 mm wide before a blade of nearly 22 mm, as they are seen aslant; source: the ellipse's own equation. */
class HandleFrontStepTest {
    private static final double HANDLE_MM = 12;
    private static final double BLADE_MM = 10.9;

    /** At a height y the rim of an elliptic front is seen bow · √(1 − y²/w²) before its ends. */
    @Test
    void findsAStepThatTheRimOfAThickFrontSpreads() {
        double bowMm = 2.5;
        List<Point> upper = new ArrayList<>(List.of(new Point(90, BLADE_MM)));
        for (double y = BLADE_MM; y < HANDLE_MM; y += 0.02) {
            upper.add(new Point(bowMm * Math.sqrt(1 - y * y / (HANDLE_MM * HANDLE_MM)), y));
        }
        upper.add(new Point(0, HANDLE_MM));
        Polyline ring = ring(upper);
        HandleFrontStep step = find(ring, bowMm).orElseThrow();
        assertThat(ring.points().get(step.onHandle()).y()).isCloseTo(HANDLE_MM, within(0.5));
        assertThat(ring.points().get(step.onBlade()).y()).isCloseTo(BLADE_MM, within(0.5));
        assertThat(find(ring, 0)).as("were the front thin").isEmpty();
    }

    /** A handle that narrows to a notch before the blade is no step, however thick it is. */
    @Test
    void takesNoNotchForAStep() {
        List<Point> notched = List.of(
                new Point(90, 13),
                new Point(6, 13),
                new Point(0, 11),
                new Point(-1.5, 12.1),
                new Point(-6, 14),
                new Point(-9, 14));
        assertThat(find(ring(notched), 2.4)).isEmpty();
    }

    private static Optional<HandleFrontStep> find(Polyline ring, double bowMm) {
        return HandleFrontStep.find(ring, new OutlineSides(ring), true, 0.5, 2, bowMm);
    }

    /** Closed by a plain lower side. */
    private static Polyline ring(List<Point> upper) {
        List<Point> points = new ArrayList<>(upper);
        points.addAll(List.of(new Point(-100, HANDLE_MM), new Point(-100, -HANDLE_MM), new Point(90, -BLADE_MM)));
        return Polyline.closed(points).resampled(0.16);
    }
}
