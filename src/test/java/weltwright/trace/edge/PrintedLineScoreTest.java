package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/** A row of 4 mm, a sample each 0.1 mm, along a line that is hidden up to a place and seen from there on. */
class PrintedLineScoreTest {
    private static final int PLACES = 41;
    private static final double STEP_MM = 0.1;

    private record Line(double hiddenToMm) implements GroundAppearance {
        @Override
        public Point groundPoint(Point pixel) {
            return pixel;
        }

        @Override
        public GroundPrint printAt(Point place) {
            return GroundPrint.LINE;
        }

        @Override
        public double lineVisibilityAt(Point place) {
            return Double.compare(place.x() - hiddenToMm, 0);
        }

        @Override
        public double[] lineColour() {
            return new double[3];
        }

        @Override
        public boolean isSteelGrey() {
            return true;
        }
    }

    private static PrintedLineScore row(double hiddenToMm) {
        return PrintedLineScore.of(new Line(hiddenToMm), PLACES, new Point(0, 0), new Point(4, 0));
    }

    /**
     * The line ends half-way between two samples. An edge at either has 20 samples of 0.1 mm on each of its sides as
     * they should be; each sample farther away costs two.
     */
    @Test
    void isGreatestWhereTheLineEnds() {
        PrintedLineScore row = row(2.05);
        assertThat(row.stepMm()).isCloseTo(STEP_MM, within(1e-12));
        for (int k = 0; k < PLACES; k++) {
            assertThat(row.scores()[k]).isCloseTo(4 - 0.2 * (Math.abs(k - 20.5) - 0.5), within(1e-9));
        }
    }

    /** Nearly 1: the sample at the edge does not count. */
    @Test
    void knowsTheEndOfALine() {
        PrintedLineScore row = row(2.05);
        assertThat(row.endAt(20)).isGreaterThan(0.85);
        assertThat(row.endAt(10)).isLessThan(0.01);
        assertThat(row.endAt(2)).as("too near to the row's end").isZero();
        assertThat(row(-1).endAt(20)).as("seen all along").isLessThan(0.01);
    }
}
