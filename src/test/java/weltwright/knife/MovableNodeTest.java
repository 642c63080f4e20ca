package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import weltwright.geometry.Point;

class MovableNodeTest {
    private static final Silhouette KNIFE = TestSilhouettes.STRAIGHT_BACK;
    private static final MovableNode TIP = new MovableNode(0);
    private static final MovableNode ON_THE_BACK = new MovableNode(1);

    @Test
    void theCurveFollowsTheNode() {
        Point to = new Point(81, 14);
        Silhouette pulled = ON_THE_BACK.pulled(KNIFE, to);
        assertThat(ON_THE_BACK.of(pulled)).isEqualTo(to);
        assertThat(pulled.outline().sampled(0.5).points()).contains(to);
    }

    @Test
    void theLandmarkOnItGoesWithIt() {
        Point to = new Point(120, 5);
        Silhouette pulled = TIP.pulled(KNIFE, to);
        assertThat(pulled.landmarks().tip()).isEqualTo(to);
        assertThat(pulled.landmarks().butt().distance(KNIFE.landmarks().butt())).isLessThan(0.1);
    }

    @Test
    void anOutlineIsNeverPulledAcrossItself() {
        assertThat(ON_THE_BACK.pulled(KNIFE, new Point(60, -60))).isEqualTo(KNIFE);
    }

    @Test
    void aNodeIsNeverPulledOntoItsNeighbour() {
        assertThat(ON_THE_BACK.pulled(KNIFE, TIP.of(KNIFE))).isEqualTo(KNIFE);
    }

    @Property(tries = 100)
    void whateverIsPulledAllLandmarksStayOnASimpleOutline(
            @ForAll @IntRange(max = 11) int index,
            @ForAll @DoubleRange(min = -130, max = 130) double x,
            @ForAll @DoubleRange(min = -50, max = 50) double y) {
        Silhouette pulled = new MovableNode(index).pulled(KNIFE, new Point(x, y));
        var curve = pulled.outline().sampled(0.1);
        assertThat(pulled.outline().sampled(0.5).polygon().isValid()).isTrue();
        for (MovableLandmark place : MovableLandmark.on(KNIFE)) {
            var at = new GeometryFactory().createPoint(place.of(pulled).coordinate());
            assertThat(curve.lineString().distance(at)).isLessThan(1e-6);
        }
    }
}
