package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

class MovableLandmarkTest {
    private static final Silhouette KNIFE = TestSilhouettes.STRAIGHT_BACK.withGuardFromTip(
            TestSilhouettes.STRAIGHT_BACK.bladeLengthMm(), TestSilhouettes.STRAIGHT_BACK.bladeLengthMm() + 6);

    @Property(tries = 50)
    void whereverALandmarkIsPulledItLiesOnTheOutline(
            @ForAll MovableLandmark place,
            @ForAll @DoubleRange(min = -150, max = 150) double x,
            @ForAll @DoubleRange(min = -60, max = 60) double y) {
        Point at = place.of(place.pulled(KNIFE, new Point(x, y)));
        assertThat(KNIFE.outline()
                        .sampled(0.1)
                        .lineString()
                        .distance(new org.locationtech.jts.geom.GeometryFactory().createPoint(at.coordinate())))
                .isLessThan(1e-6);
    }

    @Test
    void pullingOneLeavesTheOthersAndTheOutline() {
        Silhouette pulled = MovableLandmark.HEEL.pulled(KNIFE, new Point(10, -30));
        assertThat(pulled.outline()).isEqualTo(KNIFE.outline());
        assertThat(pulled.landmarks())
                .isEqualTo(new Landmarks(
                        KNIFE.landmarks().tip(),
                        pulled.landmarks().heel(),
                        KNIFE.landmarks().spineStart(),
                        KNIFE.landmarks().butt(),
                        KNIFE.landmarks().guard()));
        assertThat(pulled.landmarks().heel().x()).isCloseTo(10, within(1.0));
    }

    @Test
    void nudgingGoesAlongTheOutlineAndBack() {
        Silhouette there = MovableLandmark.HEEL.nudged(KNIFE, 2);
        assertThat(MovableLandmark.HEEL.of(there).distance(MovableLandmark.HEEL.of(KNIFE)))
                .isCloseTo(2, within(0.01));
        Silhouette back = MovableLandmark.HEEL.nudged(there, -2);
        assertThat(MovableLandmark.HEEL.of(back).distance(MovableLandmark.HEEL.of(KNIFE)))
                .isLessThan(0.01);
    }

    @Test
    void nudgingGoesOnPastTheOutlinesFirstPoint() {
        // The outline begins at the tip: one step either way of it is still on the outline, at both sides.
        assertThat(MovableLandmark.TIP.of(MovableLandmark.TIP.nudged(KNIFE, 1)).y())
                .isGreaterThan(MovableLandmark.TIP.of(KNIFE).y());
        assertThat(MovableLandmark.TIP.of(MovableLandmark.TIP.nudged(KNIFE, -1)).y())
                .isLessThan(MovableLandmark.TIP.of(KNIFE).y());
    }

    @Test
    void twiceTheOtherSideIsTheFirstAgain() {
        Silhouette other = KNIFE.withOtherSide();
        assertThat(other.spineOnLeft()).isFalse();
        assertThat(other.landmarks().heel()).isEqualTo(KNIFE.landmarks().spineStart());
        assertThat(other.withOtherSide()).isEqualTo(KNIFE);
    }

    @Test
    void aKnifeWithoutAGuardHasNoMarksOfOne() {
        assertThat(MovableLandmark.on(TestSilhouettes.STRAIGHT_BACK))
                .containsExactly(
                        MovableLandmark.TIP, MovableLandmark.HEEL, MovableLandmark.SPINE, MovableLandmark.BUTT);
        assertThat(MovableLandmark.on(KNIFE)).contains(MovableLandmark.GUARD_FRONT, MovableLandmark.GUARD_BACK);
        Silhouette pulled = MovableLandmark.GUARD_BACK.pulled(
                KNIFE, new Point(-12, KNIFE.outline().sampled(0.1).crossings(-12)[0]));
        assertThat(pulled.landmarks().guard().orElseThrow().backMm()).isCloseTo(-12, within(1.0));
        assertThat(pulled.landmarks().guard().orElseThrow().front())
                .isEqualTo(KNIFE.landmarks().guard().orElseThrow().front());
    }
}
