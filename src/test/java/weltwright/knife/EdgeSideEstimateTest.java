package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

class EdgeSideEstimateTest {
    /** The signs that hold fully: hollows for fingers, a hooked butt, a notch, and a full edge. */
    private static final double[] ODDS = {2.5, 2.1, 1.7, 2.5};

    private static final double FINGER_SIGMA_MM = 5;

    /**
     * A parabola turns evenly, by twice its height over the square of its half length for each mm. Its own image turned
     * about an end turns the other way, so that at each end the Gaussian mean lacks the integral of 1 − erf(x/(σ√2)),
     * σ√(2/π), of that. The turn counts by the height of the arc that turns as much over the 80 mm measured. At the
     * butt this side lies lower than in its middle, which speaks against it as a hook, and where it ends in a kink,
     * half its height 12 mm behind lies above the kink, which is a notch.
     */
    @Test
    void aBowCountsByTheHeightOfItsArc() {
        double height = 0.4;
        double turningMm = 80 - 2 * FINGER_SIGMA_MM * Math.sqrt(2 / Math.PI);
        double arcMm = 2 * height / (50 * 50) * turningMm * 80 / 8;
        double fallMm = height * Math.pow((50 - 8) / 50.0, 2);
        double notchMm = height * (1 - Math.pow(1 - 12 / 50.0, 2)) / 2;
        EdgeSideEstimate side = handle(x -> x > 0 ? 10 : 10 + height * (1 - Math.pow((x + 50) / 50, 2)), x -> 10);
        assertThat(side.logOdds()).isCloseTo(ODDS[0] * arcMm - ODDS[1] * fallMm + ODDS[2] * notchMm, within(0.03));
    }

    /**
     * Both waves are at their crests where the hook is measured and where they end. A Gaussian mean leaves
     * exp(−2π²σ²/l²) of the height of a wave of length l: most of the long one and nothing of the short one.
     */
    @Test
    void hollowsForFingersCountAndRipplesDoNot() {
        assertThat(wavy(1, 42).logOdds()).isCloseTo(-ODDS[0], within(0.1));
        assertThat(wavy(0.05, 7).logOdds()).isCloseTo(0, within(0.12));
    }

    private static EdgeSideEstimate wavy(double heightMm, double lengthMm) {
        return handle(x -> 10, x -> x > -8 ? 10 : 10 - heightMm * (1 - Math.cos(2 * Math.PI * (x + 50) / lengthMm)));
    }

    @Test
    void aNotchAHookedButtAndAFullEdgeCountAMillimetreAtMost() {
        assertThat(handle(x -> 10, x -> Math.abs(x) < 3 ? 8 : 10).logOdds()).isCloseTo(-ODDS[2], within(0.05));
        assertThat(handle(x -> x < -90 ? 10.5 : 10, x -> 10).logOdds()).isCloseTo(ODDS[1] / 2, within(0.05));
        assertThat(handle(x -> x < -90 ? 12 : 10, x -> 10).logOdds()).isCloseTo(ODDS[1], within(0.05));
    }

    @Test
    void isTheLessSureTheFartherTheOutlineMayBeOff() {
        EdgeSideEstimate side = new EdgeSideEstimate(Math.log(16));
        assertThat(side.isUp()).isTrue();
        assertThat(side.probability(0)).isCloseTo(16.0 / 17, within(1e-9));
        // Odds that count for half have the root.
        assertThat(side.probability(1)).isCloseTo(4.0 / 5, within(1e-9));
        assertThat(new EdgeSideEstimate(0).probability(0.1)).isEqualTo(0.5);
    }

    /** Source: the true outlines of the scenes (their truth files), none of which was used to find the odds. */
    @Test
    void tellsTheScenesKnives() throws IOException {
        for (String scene : SceneOutline.singleEdged()) {
            assertThat(edgeUp(scene).isUp()).as(scene).isTrue();
        }
    }

    /** A knife turned over, so that its edge is at positive y. */
    private static EdgeSideEstimate edgeUp(String scene) throws IOException {
        Polyline outline = SceneOutline.of(scene, -1);
        List<Point> points = outline.points();
        Point tip = Collections.max(points, (a, b) -> Double.compare(a.x(), b.x()));
        double butt = points.stream().mapToDouble(Point::x).min().orElseThrow();
        return EdgeSideEstimate.of(new OutlineSides(outline), butt, 0, tip.x());
    }

    /** A handle 100 mm long before a straight blade, its two sides so far from the axis. */
    private static EdgeSideEstimate handle(DoubleUnaryOperator up, DoubleUnaryOperator down) {
        List<Point> points = new ArrayList<>();
        for (double x = -100; x <= 20; x += 0.1) {
            points.add(new Point(x, -down.applyAsDouble(x)));
        }
        points.add(new Point(100, 0));
        for (double x = 20; x >= -100; x -= 0.1) {
            points.add(new Point(x, up.applyAsDouble(x)));
        }
        return EdgeSideEstimate.of(new OutlineSides(Polyline.closed(points)), -100, 0, 100);
    }
}
