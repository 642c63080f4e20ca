package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.TestKnives;

class DrawPathTest {

    /**
     * Both ways of asking where a point is must agree: by the motion of the whole knife, and by the station it passes.
     */
    @Property(tries = 200)
    void aPointPassesWhereTheMotionTakesIt(
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double turn,
            @ForAll @DoubleRange(min = -1, max = 1) double bend,
            @ForAll @DoubleRange(min = 10, max = 100) double x,
            @ForAll @DoubleRange(min = -15, max = 15) double y,
            @ForAll @DoubleRange(min = 0, max = 60) double drawn) {
        double radius = 150 / (Math.abs(bend) < 0.1 ? 0.1 : bend);
        List<DrawPath> paths =
                List.of(new DrawPath.Straight(turn), new DrawPath.Circular(new Point(5, radius), Math.abs(radius)));

        for (DrawPath path : paths) {
            Point before = new Point(x, y);
            Point after = path.drawn(drawn).apply(before);

            assertThat(after.x()).isLessThanOrEqualTo(x + 1e-9);
            assertThat(path.passingMm(before, after.x())).isCloseTo(after.y(), within(1e-6));
        }
    }

    /**
     * A blade that is a straight bar laid aslant draws along itself, with no more slack than its own slant at the tip.
     */
    @Test
    void aSlantedBarIsDrawnAlongItself() {
        double slope = Math.tan(Math.toRadians(8));
        DrawPath path = new Cavity(blade(x -> slope * x), 0, 0).path();

        assertThat(path).isInstanceOf(DrawPath.Straight.class);
        // It rises towards the tip, so on its way out the handle goes to the edge's side.
        assertThat(((DrawPath.Straight) path).towardsSpineRad()).isCloseTo(Math.toRadians(-8), within(0.01));
    }

    /**
     * A blade bent to a circle draws round that circle's centre, and its throat is then hardly wider than the blade.
     */
    @Test
    void aBladeBentToACircleIsDrawnRoundItsCentre() {
        double radius = 260;
        Knife sabre = blade(x -> radius - Math.sqrt(radius * radius - x * x));
        Cavity cavity = new Cavity(sabre, 0, 0);

        assertThat(cavity.path()).isInstanceOf(DrawPath.Circular.class);
        DrawPath.Circular circle = (DrawPath.Circular) cavity.path();
        assertThat(circle.centre().y()).isCloseTo(radius, within(25.0));
        double straight = 120.0 * 120 / 2 / radius;
        assertThat(cavity.check(List.of(), 2).grip().throatMm()).isLessThan(0.1 * straight);
    }

    /** A blade that tapers draws as well one way as another, and so along its axis. */
    @Test
    void aStraightTaperIsDrawnAlongItsAxis() {
        assertThat(new Cavity(TestKnives.straight(), 0, 0.8).path()).isEqualTo(DrawPath.alongAxis());
    }

    /** 120 mm long and 20 mm high, its middle on a curve, with a point of 10 mm. */
    private static Knife blade(DoubleUnaryOperator middle) {
        List<OutlineNode> nodes = new ArrayList<>();
        nodes.add(new OutlineNode(new Point(-100, -10), true));
        for (int x = 0; x <= 110; x += 10) {
            nodes.add(new OutlineNode(new Point(x, middle.applyAsDouble(x) - 10), x == 0 || x == 110));
        }
        Point tip = new Point(120, middle.applyAsDouble(120));
        nodes.add(new OutlineNode(tip, true));
        for (int x = 110; x >= 0; x -= 10) {
            nodes.add(new OutlineNode(new Point(x, middle.applyAsDouble(x) + 10), x == 0 || x == 110));
        }
        nodes.add(new OutlineNode(new Point(-100, 10), true));
        return new Knife(
                new Outline(nodes),
                new Landmarks(
                        tip,
                        new Point(0, middle.applyAsDouble(0) - 10),
                        new Point(0, middle.applyAsDouble(0) + 10),
                        new Point(-100, 0)),
                3,
                16,
                CrossSectionShape.usual(0.4));
    }
}
