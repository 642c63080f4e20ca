package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints.Sample;

/** Fits of one inner node, whose normal equation is solved by hand, and of straight lines. */
class SplineFitTest {
    /** So large that no point is taken for an outlier. */
    private static final double ANY_MM = 1e6;

    /** Weight of a squared second difference against a squared distance. */
    private static final double STIFFNESS = 0.2;

    private static final Point START = new Point(0, 0);
    private static final Point END = new Point(2, 0);
    private static final double[] KNOTS = {0, 1, 2};

    private static double height(double[] knots, Point start, Point end, double toleranceMm, Sample... samples) {
        List<Point> nodes = SplineFit.nodes(List.of(samples), knots, start, end, toleranceMm);
        assertThat(nodes).hasSize(3).startsWith(start).endsWith(end);
        return nodes.get(1).y();
    }

    @Test
    void twoKnotsAreTheEnds() {
        List<Sample> aside = List.of(new Sample(1, new Point(1, 5), 1));
        assertThat(SplineFit.nodes(aside, new double[] {0, 2}, START, END, 1)).containsExactly(START, END);
    }

    /** The least of w (y - h)² + k (2 y)² is at y = w h / (w + 4 k). */
    @Test
    void aPointAtTheKnotPullsAgainstTheStiffness() {
        Sample pull = new Sample(1, new Point(1, 0.6), 4);
        assertThat(height(KNOTS, START, END, ANY_MM, pull)).isCloseTo(4 * 0.6 / (4 + 4 * STIFFNESS), within(1e-9));
    }

    /** The cardinal spline of the middle knot is 1 - 3t²/2 + |t|³/2 half way to the next: 0.6875. */
    @Test
    void aPointBetweenTheKnotsPullsByTheCardinalSpline() {
        double b = 1 - 1.5 * 0.25 + 0.5 * 0.125;
        Sample pull = new Sample(0.5, new Point(0.5, 0.6), 4);
        assertThat(height(KNOTS, START, END, ANY_MM, pull))
                .isCloseTo(4 * b * 0.6 / (4 * b * b + 4 * STIFFNESS), within(1e-9));
    }

    /**
     * Half way between the first two of three knots the cardinal splines of start, middle and end are 0.40625, 0.6875
     * and -0.09375: their second derivatives at the middle knot are 1.5, -3 and 1.5. Both coordinates alike.
     */
    @Test
    void endsAsideCountBetweenTheKnots() {
        double b = 0.6875;
        double left = 0.6 - 0.40625 * 0.3 + 0.09375 * -0.1;
        double expected = (4 * b * left + 2 * STIFFNESS * (0.3 - 0.1)) / (4 * b * b + 4 * STIFFNESS);
        Point node = SplineFit.nodes(
                        List.of(new Sample(0.5, new Point(0.6, 0.6), 4)),
                        KNOTS,
                        new Point(0.3, 0.3),
                        new Point(-0.1, -0.1),
                        ANY_MM)
                .get(1);
        assertThat(node.x()).isCloseTo(expected, within(1e-9));
        assertThat(node.y()).isCloseTo(expected, within(1e-9));
    }

    /** Spans of 1 and 2: the second difference is 3/2 of the start, -9/4 of the middle and 3/4 of the end. */
    @Test
    void unequalKnotsBetweenEndsAside() {
        Sample pull = new Sample(1, new Point(1, 0.6), 4);
        double expected = (4 * 0.6 + STIFFNESS * 2.25 * (1.5 * 0.3 - 0.75 * 0.1)) / (4 + STIFFNESS * 2.25 * 2.25);
        assertThat(height(new double[] {0, 1, 3}, new Point(0, 0.3), new Point(3, -0.1), ANY_MM, pull))
                .isCloseTo(expected, within(1e-9));
    }

    /** The weights of Cauchy, 1 / (1 + (r / c)²) with c of three tolerances, in three rounds. */
    @Test
    void aPointFarOffCountsLess() {
        double weight = 4;
        double expected = 0;
        for (int round = 0; round < 3; round++) {
            expected = weight * 5 / (weight + 4 * STIFFNESS);
            double r = (5 - expected) / (3 * 0.1);
            weight = 4 / (1 + r * r);
        }
        Sample outlier = new Sample(1, new Point(1, 5), 4);
        assertThat(height(KNOTS, START, END, 0.1, outlier)).isCloseTo(expected, within(1e-9));
    }

    /** A straight line bends nowhere, so the penalty does not move it, nor do points on it, whatever they weigh. */
    @Test
    void pointsOnALineGiveTheLine() {
        Point along = new Point(0.6, 0.8);
        List<Sample> samples = new ArrayList<>();
        double[] knots = new double[60];
        for (int j = 0; j < knots.length; j++) {
            knots[j] = j + 0.3 * Math.sin(j);
        }
        knots[0] = 0;
        double end = knots[knots.length - 1];
        for (double s = 0; s <= end; s += 0.37) {
            samples.add(new Sample(s, along.times(s), s < 30 ? 1 + Math.cos(s) : 0));
        }
        List<Point> nodes = SplineFit.nodes(samples, knots, new Point(0, 0), along.times(end), 0.1);
        for (int j = 0; j < knots.length; j++) {
            // The cardinal splines are cut off where they are less than 6e-8 of a node's place, of 60 mm at most.
            assertThat(nodes.get(j).distance(along.times(knots[j]))).isLessThan(1e-5);
        }
    }

    /** A square of side 2, walked both ways. */
    @Test
    void distancesAlongACycle() {
        CyclicPoints square = CyclicPoints.of(
                List.of(new Point(0, 0), new Point(2, 0), new Point(2, 2), new Point(0, 2)), new double[4]);
        assertThat(square.size()).isEqualTo(4);
        assertThat(square.lengthMm()).isEqualTo(8);
        assertThat(square.distanceAlong(1, 3, 1)).isEqualTo(4);
        assertThat(square.distanceAlong(3, 1, 1)).isEqualTo(4);
        assertThat(square.distanceAlong(0, 3, 1)).isEqualTo(6);
        assertThat(square.distanceAlong(0, 3, -1)).isEqualTo(2);
        assertThat(square.distanceAlong(2, 2, 1)).isZero();
    }
}
