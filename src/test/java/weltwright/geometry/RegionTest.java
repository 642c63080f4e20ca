package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class RegionTest {
    private static final Region SQUARE = Region.box(0, 0, 40, 40);

    /** Steiner: a convex region grown by r has its area, its perimeter times r, and one disc of radius r. */
    @Test
    void growsByItsPerimeterAndADisc() {
        assertThat(SQUARE.grown(5).area().getArea()).isCloseTo(1600 + 160 * 5 + Math.PI * 25, within(0.1));
    }

    @Test
    void roundingACornerTakesWhatASquareHasMoreThanItsDisc() {
        assertThat(SQUARE.withCornersRounded(6).area().getArea()).isCloseTo(1600 - (4 - Math.PI) * 36, within(0.15));
    }

    @Test
    void fillingANotchLeavesARoundInsideCorner() {
        Region angle = SQUARE.difference(Region.box(20, 20, 50, 50));

        assertThat(angle.withNotchesFilled(6).area().getArea()).isCloseTo(1200 + (1 - Math.PI / 4) * 36, within(0.05));
    }

    @Test
    void keepsTheLargestOfSeveralParts() {
        Region cut = SQUARE.difference(Region.box(10, -1, 12, 41));

        assertThat(cut.area().getArea()).isCloseTo(28 * 40, within(1e-9));
    }

    @Test
    void runsCounterClockwise() {
        assertThat(SQUARE.boundary().signedAreaMm2()).isEqualTo(1600);
        assertThat(SQUARE.grown(1).boundary().signedAreaMm2()).isPositive();
    }

    @Test
    void givesAStretchOfItsBoundaryInOnePieceWhereverTheRingBegins() {
        Polyline stretch = SQUARE.boundaryWithin(Region.box(-5, -5, 45, 15));

        assertThat(stretch.closed()).isFalse();
        assertThat(stretch.lengthMm()).isCloseTo(15 + 40 + 15, within(1e-9));
    }

    @Test
    void theHullOfPointsHasNoneOutside() {
        Region hull = Region.hull(List.of(new Point(0, 0), new Point(6, 0), new Point(0, 8), new Point(1, 1)));

        assertThat(hull.area().getArea()).isEqualTo(24);
    }

    @Test
    void nothingIsLeftOfARegionShrunkTooFar() {
        assertThatThrownBy(() -> SQUARE.grown(-21)).isInstanceOf(IllegalArgumentException.class);
    }

    /** A slim point whose two sides cross 9 mm before it: 1 / 1.1 of the way. */
    @Test
    void aChainThatCrossesItselfKeepsWhatLiesBehindTheCrossing() {
        Polyline crossing =
                Polyline.closed(List.of(new Point(0, -1), new Point(100, 0.1), new Point(100, -0.1), new Point(0, 1)));
        Region region = Region.ofCrossing(crossing, 0.01);
        assertThat(region.area().isValid()).isTrue();
        assertThat(region.extent().getMaxX()).isCloseTo(100, within(0.011));
        assertThat(region.extent().getMinX()).isCloseTo(0, within(0.011));
    }

    /** Files of one job are the same to the last bit, so where a boundary starts must not follow from hash codes. */
    @Test
    void aCutGivesTheSamePartsEachTime() {
        List<Region> first = SQUARE.cutInTwo(new Point(15, 10), new Point(1, 3));
        for (int i = 0; i < 50; i++) {
            List<Region> again = SQUARE.cutInTwo(new Point(15, 10), new Point(1, 3));
            assertThat(again)
                    .extracting(Region::boundary)
                    .containsExactlyElementsOf(
                            first.stream().map(Region::boundary).toList());
        }
    }

    @Test
    void setOperationsKeepTheAreasOfRectangles() {
        Region other = Region.box(30, 10, 60, 20);
        assertThat(SQUARE.union(other).area().getArea()).isCloseTo(1600 + 300 - 100, within(1e-9));
        assertThat(SQUARE.intersection(other).area().getArea()).isCloseTo(100, within(1e-9));
        assertThat(SQUARE.difference(other).area().getArea()).isCloseTo(1500, within(1e-9));
    }

    @Test
    void cutsAcrossAtAPointAndGivesTheLargerPartFirst() {
        List<Region> parts = SQUARE.cutInTwo(new Point(10, 20), new Point(0, 1));
        assertThat(parts.get(0).area().getArea()).isCloseTo(30 * 40, within(1e-3));
        assertThat(parts.get(1).area().getArea()).isCloseTo(10 * 40, within(1e-3));
        assertThatThrownBy(() -> SQUARE.cutInTwo(new Point(50, 20), new Point(0, 1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Of two prongs only that is cut in which the point lies. */
    @Test
    void cutsTheProngThatThePointLiesIn() {
        Region fork = SQUARE.difference(Region.box(10, 10, 25, 41));
        List<Region> parts = fork.cutInTwo(new Point(30, 30), new Point(1, 0));
        assertThat(parts.get(1).area().getArea()).isCloseTo(15 * 10, within(1e-3));
        assertThat(parts.get(1).extent().getMinX()).isCloseTo(25, within(1e-6));
    }

    @Test
    void distancesAreThoseToTheNearestPointOfTheSquare() {
        assertThat(SQUARE.distanceTo(new Point(20, 20))).isZero();
        assertThat(SQUARE.distanceTo(new Point(43, 44))).isEqualTo(5);
        assertThat(SQUARE.contains(new Point(5, 20), 5)).isTrue();
        assertThat(SQUARE.contains(new Point(5, 20), 5.1)).isFalse();
        assertThat(SQUARE.contains(new Point(-6, 20), 5)).isFalse();
    }

    /** A circle's area; 24 chords to a quarter take off less than a part in a thousand. */
    @Test
    void aDiscHasTheAreaOfACircle() {
        Region disc = Region.disc(new Point(3, 4), 10);
        assertThat(disc.area().getArea()).isCloseTo(Math.PI * 100, within(0.3));
        assertThat(disc.extent().getMaxY()).isCloseTo(14, within(1e-9));
        assertThat(disc.extent().getMinX()).isCloseTo(-7, within(1e-9));
    }

    @Test
    void cleaningTakesOutPointsOnAStraightEdge() {
        Region square = Region.of(SQUARE.boundary().resampled(2));
        assertThat(square.boundary().points()).hasSize(80);
        assertThat(square.simplified(0.01).boundary().points()).hasSize(4);
    }

    /** A bracket takes in 4 mm of a square's sides at one end, and 1 mm at the other; then the other way up. */
    @Test
    void ofSeveralPartsOfTheBoundaryTheLongestCounts() {
        Region bracket =
                Region.box(-1, 6, 11, 11).union(Region.box(-3, -3, -0.5, 11)).union(Region.box(-3, -3, 11, 1));
        Region square = Region.box(0, 0, 10, 10);
        assertThat(square.boundaryWithin(bracket).lengthMm()).isCloseTo(4 + 10 + 4, within(1e-9));
        Region turned =
                Region.box(-1, -1, 11, 4).union(Region.box(-3, -1, -0.5, 13)).union(Region.box(-3, 9, 11, 13));
        assertThat(square.boundaryWithin(turned).lengthMm()).isCloseTo(4 + 10 + 4, within(1e-9));
    }
}
