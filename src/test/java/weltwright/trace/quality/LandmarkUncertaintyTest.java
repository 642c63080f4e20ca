package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.knife.EdgeSideEstimate;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.report.ErrorBudget;

/**
 * A knife drawn by hand, its blade a wedge of 90 degrees, the outline known to 0.1 mm. Source of what is claimed:
 * geometry. Two lines at a right angle, each moved by e = 0.1 / √2, meet e / sin 45° = 0.1 mm farther on.
 */
class LandmarkUncertaintyTest {
    private static final Point TIP = new Point(30, 0);

    private static final Polyline KNIFE = Polyline.closed(
            List.of(new Point(-100, -10), new Point(20, -10), TIP, new Point(20, 10), new Point(-100, 10)));

    private static final double SEEN_ALL_ROUND = Math.hypot(0.1, 0.1);

    @Test
    void aTipSeenOnBothSidesIsAsSureAsTheOutline() {
        assertThat(claimed(fromTip -> false)).isCloseTo(SEEN_ALL_ROUND, within(0.01));
    }

    /** On the other side a blade may then go on for so long. */
    @Test
    void whereOneSideIsNotSeenTheTipMayBeAnywhereAlongTheOther() {
        assertThat(claimed(fromTip -> fromTip < 5)).isCloseTo(Math.hypot(0.1, 4), within(0.3));
    }

    /** A lens blurs every tip. */
    @Test
    void whatBlurHidesOfATipLeavesItWhereItIs() {
        assertThat(claimed(fromTip -> fromTip < 1)).isCloseTo(SEEN_ALL_ROUND, within(0.01));
    }

    /** Two lines that are seen meet in one point. */
    @Test
    void whatIsNotSeenBehindASeenTipLeavesItWhereItIs() {
        assertThat(claimed(fromTip -> fromTip > 3)).isCloseTo(SEEN_ALL_ROUND, within(0.01));
    }

    /** @param hidden by how far from the tip, on one side of the blade */
    private static double claimed(DoublePredicate hidden) {
        Polyline ring = KNIFE.resampled(0.16);
        double[] certainty = ring.points().stream()
                .mapToDouble(p -> p.y() > 0 && hidden.test(p.distance(TIP)) ? 0 : 1)
                .toArray();
        Silhouette silhouette = new Silhouette(
                Outline.polygon(KNIFE.points()),
                new Landmarks(TIP, new Point(0, -10), new Point(0, 10), new Point(-100, 0)),
                true);
        SilhouetteBuilder.Built built = new SilhouetteBuilder.Built(
                silhouette,
                Plane.GROUND,
                new RigidMotion(0, new Point(0, 0)),
                ring,
                certainty,
                new double[certainty.length],
                new double[certainty.length],
                false,
                new EdgeSideEstimate(0),
                0);
        return LandmarkUncertainty.of(built, new ErrorBudget(0.1, List.of())).bladeLength95Mm();
    }
}
