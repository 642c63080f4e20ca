package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.knife.SuperEllipse;

class ConvexHullTest {

    @Test
    void leavesOutWhatIsInsideOrInLine() {
        ConvexHull hull = ConvexHull.of(List.of(
                new Point(0, 0), new Point(4, 0), new Point(2, 0), new Point(4, 3), new Point(0, 3), new Point(1, 1)));

        assertThat(hull.corners()).containsExactly(new Point(0, 0), new Point(4, 0), new Point(4, 3), new Point(0, 3));
        assertThat(hull.perimeterMm()).isEqualTo(14);
    }

    @Test
    void pointsInOneLineHaveNone() {
        assertThatThrownBy(() -> ConvexHull.of(List.of(new Point(0, 0), new Point(1, 1), new Point(3, 3))))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** A disc's parallel is a larger disc: 2π(r + d). */
    @Test
    void theParallelOfACircleIsACircle() {
        ConvexHull disc = ConvexHull.of(new SuperEllipse(8, 8, 2).points(new Point(0, 0), 720));

        assertThat(disc.parallelLengthMm(1.5)).isCloseTo(2 * Math.PI * 9.5, within(0.001));
    }

    /** Steiner: the parallel of a rectangle is its four sides and four quarters of a circle. */
    @Test
    void theParallelOfARectangleHasItsSidesAndOneWholeTurn() {
        ConvexHull rectangle =
                ConvexHull.of(List.of(new Point(0, -3), new Point(30, -3), new Point(30, 3), new Point(0, 3)));

        assertThat(rectangle.parallelLengthMm(2)).isCloseTo(2 * (30 + 6) + 4 * Math.PI, within(1e-9));
    }

    /** Steiner once more: to grow by r and go parallel at d is to go parallel at r + d. */
    @Property(tries = 100)
    void growingAddsToTheParallel(
            @ForAll @Size(6) List<@DoubleRange(min = -20, max = 20) Double> values,
            @ForAll @DoubleRange(min = 0.1, max = 3) double by) {
        List<Point> points = List.of(
                new Point(values.get(0), values.get(1)),
                new Point(values.get(2) + 45, values.get(3)),
                new Point(values.get(4) + 20, values.get(5) + 45));
        ConvexHull hull = ConvexHull.of(points);

        double grown = hull.grown(by).perimeterMm();

        // It is drawn with tangents, so it is never too short, and at most 0.3 % of the arcs too long.
        assertThat(grown).isBetween(hull.parallelLengthMm(by) - 1e-9, hull.parallelLengthMm(by) + 0.02 * by);
    }

    /** Cauchy: the Minkowski sum with a segment of length t, of perimeter 2t, is longer round by as much. */
    @Test
    void thickeningAddsTwiceItsMeasureToThePerimeter() {
        ConvexHull triangle = ConvexHull.of(List.of(new Point(0, 0), new Point(4, 0), new Point(4, 3)));

        ConvexHull thickened = triangle.thickened(1.5);

        assertThat(thickened.perimeterMm()).isCloseTo(12 + 2 * 1.5, within(1e-9));
        assertThat(thickened.highestMm()).isCloseTo(3.75, within(1e-9));
    }

    @Test
    void aThreadRunsStraightWhereNothingStandsUp() {
        assertThat(ConvexHull.thread(new Point(0, 3), new Point(10, 3), List.of(new Point(5, 2), new Point(-1, 9))))
                .containsExactly(new Point(0, 3), new Point(10, 3));
    }

    @Test
    void aThreadBendsOverWhatStandsUp() {
        assertThat(ConvexHull.thread(new Point(0, 0), new Point(8, 0), List.of(new Point(4, 3), new Point(2, 1))))
                .containsExactly(new Point(0, 0), new Point(4, 3), new Point(8, 0));
    }
}
