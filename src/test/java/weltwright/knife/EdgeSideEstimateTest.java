package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

class EdgeSideEstimateTest {
    /** Of the handles made up here, what a hand closes round: eight tenths of 100 mm. */
    private static final double HAND_MM = 80;

    private static final double FINGER_SIGMA_MM = 5;

    /**
     * A parabola turns evenly, by twice its height over the square of its half length for each mm. Its own image turned
     * about an end turns the other way, so that at each end the Gaussian mean lacks the integral of 1 − erf(x/(σ√2)),
     * σ√(2/π), of that.
     */
    @Test
    void aBowCountsByTheHeightOfItsArc() {
        double turnPerMm = 2 * 4.0 / (50 * 50);
        double turningMm = HAND_MM - 2 * FINGER_SIGMA_MM * Math.sqrt(2 / Math.PI);
        EdgeSideEstimate side = handle(x -> 10 + 4 * (1 - Math.pow((x + 50) / 50, 2)), x -> 10);
        assertThat(side.shapingMm()).isCloseTo(turnPerMm * turningMm * HAND_MM / 8, within(0.03));
    }

    /**
     * A wave of height a and length l turns by 4 · 2π a/l; a Gaussian mean leaves exp(−2π²σ²/l²) of its height. So of
     * one 40 mm long three quarters are left, of one 8 mm long far less than a thousandth.
     */
    @Test
    void hollowsForFingersCountAndRipplesDoNot() {
        double left = Math.exp(-2 * Math.pow(Math.PI * FINGER_SIGMA_MM / 40, 2));
        double turn = HAND_MM / 40 * 4 * 2 * Math.PI * left / 40;
        // One in a hundred: so steep a wave's angles are that much less than its slopes.
        assertThat(handle(x -> 10, x -> 10 + Math.sin(2 * Math.PI * (x + 90) / 40))
                        .shapingMm())
                .isCloseTo(-turn * HAND_MM / 8, within(0.01 * turn * HAND_MM / 8));
        double ripples = HAND_MM / 8 * 4 * 2 * Math.PI * 0.3 / 8;
        assertThat(handle(x -> 10, x -> 10 + 0.3 * Math.sin(2 * Math.PI * (x + 90) / 8))
                        .shapingMm())
                .isCloseTo(0, within(1e-3 * ripples * HAND_MM / 8));
    }

    @Test
    void aNotchCountsByItsDepth() {
        EdgeSideEstimate side = handle(x -> 10, x -> Math.abs(x) < 3 ? 8 : 10);
        assertThat(side.notchMm()).isCloseTo(-2, within(0.05));
    }

    /** Laplace's rule of succession: what held n times and never failed will hold again with odds of n + 1 to 1. */
    @Test
    void isAsSureAsTwelveKnivesAllow() {
        EdgeSideEstimate byHandle = new EdgeSideEstimate(3, 0, 0, false);
        assertThat(byHandle.isUp()).isTrue();
        assertThat(byHandle.probability(0)).isCloseTo(13.0 / 14, within(1e-9));
        // An edge that is straighter than the spine: 13 to 1 for it, 10 to 4 against it.
        EdgeSideEstimate wharncliffe = new EdgeSideEstimate(-3, 0, 3, false);
        assertThat(wharncliffe.isUp()).isFalse();
        assertThat(wharncliffe.probability(0)).isCloseTo(5.2 / 6.2, within(1e-9));
    }

    @Test
    void isTheLessSureTheFartherTheOutlineMayBeOff() {
        EdgeSideEstimate side = new EdgeSideEstimate(1, 0, 0, false);
        // A sign that counts for half has the root of its odds.
        assertThat(side.probability(1)).isCloseTo(Math.sqrt(13) / (1 + Math.sqrt(13)), within(1e-9));
        assertThat(new EdgeSideEstimate(0, 0, 0, false).probability(0.1)).isEqualTo(0.5);
        assertThat(new EdgeSideEstimate(0, 0, 0, true).probability(0.1))
                .as("two edges")
                .isEqualTo(1);
    }

    /**
     * How often each sign holds on the true outlines of the scenes (their truth files). The five knives of the photos
     * beside the project, on which shaping and notch held five times and the belly four, make up the twelve of the
     * odds.
     */
    @Test
    void theSignsHoldAsOftenAsTheirOddsSay() throws IOException {
        List<EdgeSideEstimate> sides = new ArrayList<>();
        for (String scene : SceneOutline.singleEdged()) {
            sides.add(edgeUp(scene));
        }
        assertThat(holding(sides, EdgeSideEstimate::shapingMm)).isEqualTo(7);
        assertThat(holding(sides, EdgeSideEstimate::notchMm)).isEqualTo(5);
        assertThat(holding(sides, EdgeSideEstimate::bellyMm)).isEqualTo(5);
    }

    private static long holding(List<EdgeSideEstimate> sides, ToDoubleFunction<EdgeSideEstimate> sign) {
        return sides.stream().filter(side -> sign.applyAsDouble(side) > 0).count();
    }

    /** A knife turned over, so that its edge is at positive y. */
    private static EdgeSideEstimate edgeUp(String scene) throws IOException {
        Polyline outline = SceneOutline.of(scene, -1);
        List<Point> points = outline.points();
        Point tip = Collections.max(points, (a, b) -> Double.compare(a.x(), b.x()));
        double butt = points.stream().mapToDouble(Point::x).min().orElseThrow();
        return EdgeSideEstimate.of(new OutlineSides(outline), butt, 0, tip.x(), tip.y());
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
        return EdgeSideEstimate.of(new OutlineSides(Polyline.closed(points)), -100, 0, 100, 0);
    }

    /**
     * Source: logic. What holds in one reading alone is not told, and a sign that both share is no stronger than the
     * weaker.
     */
    @Test
    void twoReadingsSayWhatBothSay() {
        EdgeSideEstimate both =
                new EdgeSideEstimate(5, 1, -2, false).agreeingWith(new EdgeSideEstimate(-1, 3, -1, true));
        assertThat(both).isEqualTo(new EdgeSideEstimate(0, 1, -1, false));
        assertThat(new EdgeSideEstimate(5, 0, 0, false)
                        .agreeingWith(new EdgeSideEstimate(-5, 0, 0, false))
                        .probability(0.1))
                .isEqualTo(0.5);
    }
}
