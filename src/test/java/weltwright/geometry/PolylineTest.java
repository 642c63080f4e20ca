package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chains whose lengths and areas follow from elementary geometry. */
class PolylineTest {
    /** 3, 4 and 5 mm: a right-angled triangle, counter-clockwise. */
    private static final Polyline TRIANGLE =
            Polyline.closed(List.of(new Point(0, 0), new Point(3, 0), new Point(3, 4)));

    /** Two legs of it, 3 and 4 mm. */
    private static final Polyline LEGS = Polyline.open(TRIANGLE.points());

    @Test
    void refusesTooFewPoints() {
        Point p = new Point(0, 0);
        assertThatThrownBy(() -> Polyline.open(List.of(p))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Polyline.closed(List.of(p, new Point(1, 0))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(Polyline.open(List.of(p, new Point(1, 0))).lengthMm()).isEqualTo(1);
    }

    @Test
    void aClosedChainCountsTheSegmentBackToItsFirstPoint() {
        assertThat(TRIANGLE.lengthMm()).isEqualTo(12);
        assertThat(TRIANGLE.stationsMm()).containsExactly(0, 3, 7, 12);
        assertThat(LEGS.lengthMm()).isEqualTo(7);
        assertThat(LEGS.stationsMm()).containsExactly(0, 3, 7);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "1.5, 1.5, 0",
        "3, 3, 0",
        "5, 3, 2",
        "7, 3, 4",
        "9.5, 1.5, 2",
        "12, 0, 0",
        "13, 1, 0",
        "-2.5, 1.5, 2",
        "29, 3, 2"
    })
    void goesRoundAndRoundAClosedChain(double sMm, double x, double y) {
        assertPoint(TRIANGLE.at(sMm), x, y);
        assertPoint(TRIANGLE.at(new double[] {sMm}).get(0), x, y);
    }

    @ParameterizedTest
    @CsvSource({"-1, 0, 0", "0, 0, 0", "2, 2, 0", "3, 3, 0", "6, 3, 3", "7, 3, 4", "9, 3, 4"})
    void staysWithinTheEndsOfAnOpenChain(double sMm, double x, double y) {
        assertPoint(LEGS.at(sMm), x, y);
    }

    @Test
    void aRepeatedPointHasNoDirectionButAPlace() {
        Polyline chain = Polyline.open(List.of(new Point(0, 0), new Point(2, 0), new Point(2, 0), new Point(2, 2)));
        assertPoint(chain.at(2), 2, 0);
        assertPoint(chain.at(3), 2, 1);
        assertThat(chain.stationOf(new Point(2.5, 0.5))).isEqualTo(2.5);
    }

    @Test
    void aStretchOfAClosedChainMayGoAllTheWayRound() {
        assertThat(TRIANGLE.stretch(1, 5).points()).containsExactly(new Point(1, 0), new Point(3, 0), new Point(3, 2));
        assertThat(TRIANGLE.stretch(5, 1).lengthMm()).isCloseTo(8, within(1e-12));
        assertThat(TRIANGLE.stretch(5, 5).lengthMm()).isCloseTo(12, within(1e-12));
        assertThat(TRIANGLE.stretch(5, 5).points()).hasSize(5);
        assertThat(TRIANGLE.stretch(-7, 13).points())
                .isEqualTo(TRIANGLE.stretch(5, 1).points());
        assertThat(TRIANGLE.stretch(3, 7).points()).containsExactly(new Point(3, 0), new Point(3, 4));
    }

    @Test
    void resamplesAtEqualArcLengths() {
        Polyline even = LEGS.resampled(1.1); // 7 / 1.1 = 6.4 steps
        assertThat(even.closed()).isFalse();
        assertThat(even.points()).hasSize(7);
        assertPoint(even.points().get(2), 7 / 3.0, 0);
        assertPoint(even.points().get(6), 3, 4);
        assertThat(TRIANGLE.resampled(2).points()).hasSize(6).contains(new Point(3, 1));
        assertThat(TRIANGLE.resampled(100).points()).hasSize(3);
        assertThat(LEGS.resampled(100).points()).containsExactly(new Point(0, 0), new Point(3, 4));
    }

    /**
     * Gaussian smoothing scales a harmonic of a circle of radius r by exp(-sigma²/2r²): the circle itself is its first
     * (the Gaussian's Fourier transform).
     */
    @Test
    void smoothingShrinksACircleAsTheGaussiansTransformSays() {
        double radiusMm = 10;
        double sigmaMm = 2;
        Polyline circle = Polyline.closed(IntStream.range(0, 720)
                .mapToObj(i -> new RigidMotion(Math.toRadians(i / 2.0), new Point(5, 6)).apply(new Point(radiusMm, 0)))
                .toList());
        double expected = radiusMm * Math.exp(-sigmaMm * sigmaMm / (2 * radiusMm * radiusMm));

        assertThat(circle.smoothed(sigmaMm, 0.1).points())
                .allSatisfy(p -> assertThat(p.distance(new Point(5, 6))).isCloseTo(expected, within(0.005)));
    }

    @Test
    void smoothingLeavesAStraightLineAndItsEnds() {
        Polyline line = Polyline.open(List.of(new Point(0, 0), new Point(30, 40)));
        Polyline smooth = line.smoothed(3, 1);
        assertThat(smooth.points()).hasSize(51);
        for (int i = 0; i <= 50; i++) {
            assertPoint(smooth.points().get(i), 0.6 * i, 0.8 * i);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, -1, 1", "-1, -1, 0", "4, 1, 4", "5, 5, 7", "1, 2, 9.8"})
    void findsTheNearestPlaceOnAChain(double x, double y, double sMm) {
        // (1, 2) projects onto the hypotenuse from (3, 4), direction (-3, -4) / 5, at (6 + 8) / 5 = 2.8 mm
        assertThat(TRIANGLE.stationOf(new Point(x, y))).isCloseTo(sMm, within(1e-12));
    }

    @Test
    void theAreaIsPositiveCounterClockwise() {
        assertThat(TRIANGLE.signedAreaMm2()).isEqualTo(6);
        assertThat(TRIANGLE.reversed().signedAreaMm2()).isEqualTo(-6);
        assertThat(TRIANGLE.polygon().getArea()).isEqualTo(6);
        assertThat(TRIANGLE.reversed().points()).containsExactly(new Point(3, 4), new Point(3, 0), new Point(0, 0));
        assertThatThrownBy(LEGS::polygon).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void crossesAnUprightLineOnceForEachSideOfIt() {
        assertThat(TRIANGLE.crossings(1.5)).containsExactly(0, 2);
        assertThat(TRIANGLE.reversed().crossings(1.5)).containsExactly(0, 2);
        assertThat(TRIANGLE.crossings(-1)).isEmpty();
        assertThat(TRIANGLE.crossings(4)).isEmpty();
        // through a corner: it belongs to one of its two segments
        Polyline wedge = Polyline.open(List.of(new Point(0, 0), new Point(1, 5), new Point(2, 6)));
        assertThat(wedge.crossings(1)).containsExactly(5);
    }

    @Test
    void goesToJtsAndBack() {
        assertThat(TRIANGLE.lineString().getLength()).isEqualTo(12);
        assertThat(LEGS.lineString().getNumPoints()).isEqualTo(3);
        assertThat(Polyline.shell(TRIANGLE.polygon())).isEqualTo(TRIANGLE);
        assertThat(LEGS.map(p -> p.times(2)).lengthMm()).isEqualTo(14);
        assertThat(TRIANGLE.map(Point::left).closed()).isTrue();
    }

    private static void assertPoint(Point p, double x, double y) {
        assertThat(p.distance(new Point(x, y))).as("%s", p).isLessThan(1e-12);
    }

    /** A chain that meets x = 0 at 5, 0 and 3, in this order. */
    @Test
    void crossingsAscend() {
        Polyline chain = Polyline.open(List.of(
                new Point(-1, 5),
                new Point(1, 5),
                new Point(1, 0),
                new Point(-1, 0),
                new Point(-1, 3),
                new Point(1, 3)));
        assertThat(chain.crossings(0)).containsExactly(0, 3, 5);
    }
}
