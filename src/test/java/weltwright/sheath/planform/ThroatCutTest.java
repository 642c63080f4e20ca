package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Region;

class ThroatCutTest {
    private static final double NO_FOLD = Double.POSITIVE_INFINITY;

    /** 3 mm deeper over 30 mm across: a tenth. */
    @Test
    void aSlantedCutIsAStraightLineThroughBothPoints() {
        ThroatCut cut = new ThroatCut(new Point(5, -15), new Point(8, 15), NO_FOLD);
        assertThat(cut.slope()).isCloseTo(0.1, within(1e-12));
        assertThat(cut.atMm(-15)).isCloseTo(5, within(1e-12));
        assertThat(cut.atMm(0)).isCloseTo(6.5, within(1e-12));
        assertThat(cut.atMm(25)).isCloseTo(9, within(1e-12));
    }

    /** Laid open, the two halves of a folded body are mirror images in the fold. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 7, 30})
    void onTheOtherHalfOfAFoldTheCutRunsBack(double pastFoldMm) {
        ThroatCut cut = new ThroatCut(new Point(5, -15), new Point(8, 15), 12);
        assertThat(cut.atMm(12 + pastFoldMm)).isCloseTo(cut.atMm(12 - pastFoldMm), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {12, Double.POSITIVE_INFINITY})
    void aStraightCutIsSquareToTheKnife(double foldMm) {
        ThroatCut cut = ThroatCut.straight(-30, foldMm);
        assertThat(cut.slope()).isZero();
        assertThat(cut.atMm(-20)).isEqualTo(-30);
        assertThat(cut.alongMm(4)).isEqualTo(4);
    }

    /** Distance of a point from a line, by Hesse's normal form. */
    @Test
    void aPlaceGoneAlongIsAtItsDistanceFromTheLine() {
        ThroatCut cut = new ThroatCut(new Point(5, -15), new Point(17, 15), NO_FOLD);
        Point inside = new Point(cut.atMm(2) + cut.alongMm(4), 2);
        assertThat(distance(cut, inside)).isCloseTo(4, within(1e-9));
    }

    /** The cut touches the circle round the hole, on its side towards the throat. */
    @ParameterizedTest
    @CsvSource({"25, -14, 4", "12, -10, 6", "40, 2, 3"})
    void fromTheFoldItPassesAHoleAtTheDistance(double holeX, double holeY, double distanceMm) {
        Point hole = new Point(holeX, holeY);
        ThroatCut cut = ThroatCut.fromFold(new Point(3, 12), hole, distanceMm);
        assertThat(distance(cut, hole)).isCloseTo(distanceMm, within(1e-9));
        assertThat(cut.atMm(holeY)).as("above the hole").isLessThan(holeX);
        assertThat(cut.atMm(12)).isCloseTo(3, within(1e-9));
        assertThat(cut.edge().minus(hole).dot(cut.edge().minus(cut.spine())))
                .as("a tangent meets the radius at a right angle")
                .isCloseTo(0, within(1e-9));
    }

    /** What lies deeper than the line by more than it is moved in is below it, on both halves of a folded body. */
    @ParameterizedTest
    @CsvSource({"12", "Infinity"})
    void belowTheCutIsAllThatLiesDeeper(double foldMm) {
        ThroatCut cut = new ThroatCut(new Point(5, -15), new Point(8, 12), foldMm);
        Region below = cut.below(2);
        for (double y : new double[] {-40, -3, 12, 25, 50}) {
            assertThat(below.contains(new Point(cut.atMm(y) + 2.01, y), 0)).isTrue();
            assertThat(below.contains(new Point(cut.atMm(y) + 1.99, y), 0)).isFalse();
            assertThat(below.contains(new Point(500, y), 0)).isTrue();
        }
    }

    private static double distance(ThroatCut cut, Point p) {
        Point along = cut.spine().minus(cut.edge()).unit();
        return Math.abs(along.cross(p.minus(cut.edge())));
    }
}
