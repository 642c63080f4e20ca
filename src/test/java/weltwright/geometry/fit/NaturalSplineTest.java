package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Splines whose second derivatives are solved by hand. */
class NaturalSplineTest {
    private static final double H = 1e-4;

    @Test
    void passesThroughItsValues() {
        double[] knots = {0, 1, 3, 4, 7};
        double[] values = {2, -1, 4, 4, 0};
        NaturalSpline spline = new NaturalSpline(knots, values);
        for (int i = 0; i < knots.length; i++) {
            assertThat(spline.at(knots[i])).isCloseTo(values[i], within(1e-12));
        }
    }

    @Test
    void twoKnotsMakeAStraightLineAndSoDoValuesOnOne() {
        assertThat(new NaturalSpline(new double[] {1, 3}, new double[] {5, 9}).at(1.5))
                .isCloseTo(6, within(1e-12));
        NaturalSpline line = new NaturalSpline(new double[] {0, 1, 3, 7}, new double[] {1, 3, 7, 15});
        assertThat(line.at(0.3)).isCloseTo(1.6, within(1e-12));
        assertThat(line.at(5)).isCloseTo(11, within(1e-12));
    }

    /** Knots -1, 0, 1 and values 0, 1, 0: 4 m = 6 (-1 - 1), so m = -3 and s(t) = 1 - 3t²/2 + |t|³/2. */
    @Test
    void theCardinalSplineOfThreeKnots() {
        NaturalSpline spline = new NaturalSpline(new double[] {-1, 0, 1}, new double[] {0, 1, 0});
        for (double t : new double[] {-0.9, -0.5, 0.2, 0.7}) {
            assertThat(spline.at(t)).isCloseTo(1 - 1.5 * t * t + 0.5 * Math.pow(Math.abs(t), 3), within(1e-12));
        }
    }

    /** Unequal knots 0, 1, 3 and values 0, 1, 0: 6 m = 6 (-1/2 - 1), so m = -1.5 at the middle knot. */
    @Test
    void unequalKnots() {
        NaturalSpline spline = new NaturalSpline(new double[] {0, 1, 3}, new double[] {0, 1, 0});
        // s(t) = t + (t³ - t) m / 6 before the middle knot
        assertThat(spline.at(0.5)).isCloseTo(0.5 + (0.125 - 0.5) * -1.5 / 6, within(1e-12));
        // s = a + (a³ - a) m h² / 6 with h = 2, a = (3 - t) / 2 behind it
        assertThat(spline.at(2)).isCloseTo(0.5 + (0.125 - 0.5) * -1.5 * 4 / 6, within(1e-12));
    }

    @Test
    void slopeAndCurvatureGoOnAcrossKnotsAndEndsAreFree() {
        NaturalSpline spline = new NaturalSpline(new double[] {0, 1, 3, 4, 7}, new double[] {2, -1, 4, 4, 0});
        for (double knot : new double[] {1, 3, 4}) {
            double before = (spline.at(knot) - spline.at(knot - H)) / H;
            double after = (spline.at(knot + H) - spline.at(knot)) / H;
            assertThat(after).isCloseTo(before, within(0.01));
            assertThat(second(spline, knot + 2 * H)).isCloseTo(second(spline, knot - 2 * H), within(0.02));
        }
        assertThat(second(spline, H)).isCloseTo(0, within(0.01));
        assertThat(second(spline, 7 - H)).isCloseTo(0, within(0.01));
    }

    private static double second(NaturalSpline spline, double t) {
        return (spline.at(t + H) - 2 * spline.at(t) + spline.at(t - H)) / (H * H);
    }
}
