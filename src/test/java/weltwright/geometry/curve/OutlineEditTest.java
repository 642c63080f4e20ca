package weltwright.geometry.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Edits of outlines whose shape is known in closed form: a circle, a rectangle. */
class OutlineEditTest {
    private static final double RADIUS_MM = 40;

    /** Sixteen nodes on a circle of radius 40, the first of them sharp. */
    private static final Outline CIRCLE = circle();

    private static final Outline RECTANGLE =
            Outline.polygon(List.of(new Point(0, 0), new Point(100, 0), new Point(100, 30), new Point(0, 30)));

    private static Outline circle() {
        List<OutlineNode> nodes = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            nodes.add(new OutlineNode(onCircle(i * Math.PI / 8), i == 0));
        }
        return new Outline(nodes);
    }

    private static Point onCircle(double angle) {
        return new Point(RADIUS_MM * Math.cos(angle), RADIUS_MM * Math.sin(angle));
    }

    @Test
    void aNodeThatIsAddedLiesOnTheCurveAndLeavesItWhereItWas() {
        Outline more = OutlineEdit.added(CIRCLE, new Point(0.5, 55));
        assertThat(more.nodes()).hasSize(17).containsAll(CIRCLE.nodes());
        OutlineNode added = more.nodes().stream()
                .filter(n -> !CIRCLE.nodes().contains(n))
                .findFirst()
                .orElseThrow();
        assertThat(added.sharp()).isFalse();
        assertThat(CIRCLE.sampled(0.01).lineString().distance(at(added.at()))).isLessThan(1e-4);
        assertThat(added.at().distance(new Point(0.5, 55).times(40 / Math.hypot(0.5, 55))))
                .isLessThan(0.1);
        assertThat(apart(more, CIRCLE)).isLessThan(0.02);
    }

    @Test
    void aNodeThatIsRemovedIsGoneAndTheOthersStay() {
        Outline fewer = OutlineEdit.removed(CIRCLE, 5);
        assertThat(fewer.nodes()).hasSize(15).doesNotContain(CIRCLE.nodes().get(5));
        // What spans 45 degrees of a circle by one cubic is off by less than a hundredth of the radius.
        assertThat(apart(fewer, CIRCLE)).isLessThan(0.4);
    }

    @Test
    void aCornerMadeSmoothIsRoundAndASmoothNodeMadeACornerMayTurn() {
        Outline round = OutlineEdit.withSharpness(RECTANGLE, 2, false);
        assertThat(round.nodes().get(2)).isEqualTo(new OutlineNode(new Point(100, 30), false));
        assertThat(new CornerFinder(round.sampled(0.2).resampled(0.2)).find()).hasSize(3);
        assertThat(OutlineEdit.withSharpness(round, 2, true)).isEqualTo(RECTANGLE);
    }

    @Test
    void saysWhyItCannot() {
        assertThatThrownBy(() -> OutlineEdit.withSharpness(CIRCLE, 0, false))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("one corner at least");
        assertThatThrownBy(() -> OutlineEdit.removed(CIRCLE, 0)).hasMessageContaining("one corner at least");
        assertThatThrownBy(() -> OutlineEdit.moved(CIRCLE, 4, new Point(0, -60)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("cross itself");
        assertThatThrownBy(() -> OutlineEdit.moved(CIRCLE, 4, onCircle(5 * Math.PI / 8)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("one place");
        Outline triangle = Outline.polygon(
                RECTANGLE.nodes().stream().map(OutlineNode::at).limit(3).toList());
        assertThatThrownBy(() -> OutlineEdit.removed(triangle, 0)).hasMessageContaining("three points");
    }

    @Property(tries = 200)
    void whateverIsPulledTheOutlineIsSimpleOrRefused(
            @ForAll @IntRange(max = 15) int index,
            @ForAll @DoubleRange(min = -90, max = 90) double x,
            @ForAll @DoubleRange(min = -90, max = 90) double y) {
        try {
            Polyline curve = OutlineEdit.moved(CIRCLE, index, new Point(x, y)).sampled(0.2);
            assertThat(curve.polygon().isValid()).isTrue();
            assertThat(curve.signedAreaMm2()).isPositive();
        } catch (UserFacingException refused) {
            assertThat(refused.getMessage()).doesNotContain("Exception");
        }
    }

    /** The bulge is half a period of a cosine, 2 mm high, on the upper side of the rectangle between x = 30 and 70. */
    @Test
    void aRedrawnStretchRunsAlongItsPointsAndTheRestStays() {
        Polyline bulge = bulge();
        Outline redrawn = OutlineEdit.redrawn(RECTANGLE, OutlineEdit.oriented(RECTANGLE, bulge.reversed()));
        assertThat(redrawn).isEqualTo(OutlineEdit.redrawn(RECTANGLE, OutlineEdit.oriented(RECTANGLE, bulge)));
        assertThat(redrawn.nodes()).containsAll(RECTANGLE.nodes()).hasSizeLessThan(20);
        for (Point p : redrawn.sampled(0.25).points()) {
            double x = p.x();
            if (p.y() >= 29.9) {
                double height = x > 30 && x < 70 ? 30 + 1 - Math.cos(2 * Math.PI * (x - 30) / 40) : 30;
                assertThat(p.y()).as("at x = %f", x).isCloseTo(height, within(0.12));
            } else {
                assertThat(at(p).distance(RECTANGLE.sampled(1).lineString())).isLessThan(1e-9);
            }
        }
    }

    private static Polyline bulge() {
        List<Point> points = new ArrayList<>();
        for (double x = 72; x >= 28; x -= 0.3) {
            double height = x > 30 && x < 70 ? 1 - Math.cos(2 * Math.PI * (x - 30) / 40) : 0;
            points.add(new Point(x, 30 + height));
        }
        return Polyline.open(points);
    }

    /** A notch with a corner at its bottom, and one at each rim: as where a guard meets the blade. */
    @Test
    void aRedrawnStretchHasItsCorners() {
        List<Point> notch = new ArrayList<>();
        for (double x = 80; x >= 20; x -= 0.2) {
            notch.add(new Point(x, 30 - Math.max(0, 6 - Math.abs(x - 50))));
        }
        Outline redrawn = OutlineEdit.redrawn(RECTANGLE, Polyline.open(notch));
        List<Point> corners = redrawn.nodes().stream()
                .filter(OutlineNode::sharp)
                .map(OutlineNode::at)
                .toList();
        assertThat(corners).hasSize(7);
        for (Point corner : List.of(new Point(44, 30), new Point(50, 24), new Point(56, 30))) {
            assertThat(corners).anySatisfy(p -> assertThat(p.distance(corner)).isLessThan(0.1));
        }
    }

    @Test
    void aStrokeThatDoesNotBelongToTheOutlineIsRefused() {
        Polyline away = Polyline.open(List.of(new Point(30, 60), new Point(50, 45), new Point(70, 60)));
        assertThatThrownBy(() -> OutlineEdit.redrawn(RECTANGLE, away))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("begins nor ends on the outline");
        Polyline across = Polyline.open(List.of(new Point(70, 30), new Point(50, -30), new Point(30, 30)));
        assertThatThrownBy(() -> OutlineEdit.redrawn(RECTANGLE, across)).hasMessageContaining("cross itself");
        Polyline dot = Polyline.open(List.of(new Point(50, 30), new Point(49.5, 30)));
        assertThatThrownBy(() -> OutlineEdit.redrawn(RECTANGLE, dot)).hasMessageContaining("too short");
    }

    private static double apart(Outline a, Outline b) {
        return DiscreteHausdorffDistance.distance(
                a.sampled(0.05).lineString(), b.sampled(0.05).lineString());
    }

    private static org.locationtech.jts.geom.Point at(Point p) {
        return new org.locationtech.jts.geom.GeometryFactory().createPoint(p.coordinate());
    }
}
