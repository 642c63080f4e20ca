package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A bar of 200 by 20 mm with a dent 2 mm deep and 10 mm long in one of its long sides, as a dark patch at the rim of a
 * handle makes it. Source of what is wanted: how the bar was drawn.
 */
class EdgeJumpTest {
    private static final double DEEP_MM = 2;

    private static final double FRONT_X = 40;

    private static final Polyline BAR = bar(10);

    /** The left wall of the dent is where the outline goes into it; the right one, where it comes back, is seen. */
    private static final Predicate<Point> LEFT_WALL = p -> Math.abs(p.x()) < 0.01 && p.y() > 8.1 && p.y() < 9.9;

    @Test
    void aDentThatIsEnteredUnseenIsOpenByItsDepth() {
        List<EdgeJump> jumps = EdgeJump.in(BAR, certainty(BAR, LEFT_WALL), FRONT_X);
        assertThat(jumps).hasSize(1);
        assertThat(jumps.get(0).heightMm()).isCloseTo(DEEP_MM, within(0.4));
        double[] certainty = EdgeJump.reduceCertainty(certainty(BAR, p -> false), jumps);
        assertThat(certainty[nearest(BAR, new Point(2, 8))]).as("in the dent").isZero();
        assertThat(certainty[nearest(BAR, new Point(-2, 10))]).as("before it").isZero();
        assertThat(certainty[nearest(BAR, new Point(-30, 10))])
                .as("well before it")
                .isOne();
        assertThat(certainty[nearest(BAR, new Point(0, -10))])
                .as("on the other side")
                .isOne();
    }

    @Test
    void aNotchWhoseEdgeIsSeenIsTheKnifes() {
        assertThat(EdgeJump.in(BAR, certainty(BAR, p -> false), FRONT_X)).isEmpty();
    }

    /** Common practice: a handle stands proud of its blade. */
    @Test
    void whereTheHandleEndsAStepIsTheKnifes() {
        assertThat(EdgeJump.in(BAR, certainty(BAR, LEFT_WALL), 1)).isEmpty();
    }

    /** The curve of an outline runs over a few points that have gone astray. */
    @Test
    void aFewPointsBesideTheEdgeAreNoOtherLine() {
        Polyline ring = bar(1);
        assertThat(EdgeJump.in(ring, certainty(ring, LEFT_WALL), FRONT_X)).isEmpty();
    }

    /** A line that nobody sees is as weak as its ends: that is told already. */
    @Test
    void whereNothingShowsThereIsNothingToLeapTo() {
        assertThat(EdgeJump.in(BAR, certainty(BAR, p -> p.y() > 0 && Math.abs(p.x()) < 30), FRONT_X))
                .isEmpty();
    }

    @Test
    void whatIsOpenIsBridgedStraight() {
        Polyline bridged = EdgeJump.bridged(BAR, EdgeJump.in(BAR, certainty(BAR, LEFT_WALL), FRONT_X));
        double lowest = bridged.points().stream()
                .filter(p -> p.y() > 0 && p.x() > -20 && p.x() < 4)
                .mapToDouble(Point::y)
                .min()
                .orElse(10);
        assertThat(lowest).isGreaterThan(10 - DEEP_MM / 2);
    }

    private static Polyline bar(double dentMm) {
        double floor = 10 - DEEP_MM;
        return Polyline.closed(List.of(
                        new Point(-100, -10),
                        new Point(100, -10),
                        new Point(101, 0),
                        new Point(100, 10),
                        new Point(dentMm, 10),
                        new Point(dentMm, floor),
                        new Point(0, floor),
                        new Point(0, 10),
                        new Point(-100, 10),
                        new Point(-101, 0)))
                .resampled(0.16);
    }

    private static double[] certainty(Polyline ring, Predicate<Point> unseen) {
        return ring.points().stream().mapToDouble(p -> unseen.test(p) ? 0 : 1).toArray();
    }

    private static int nearest(Polyline ring, Point place) {
        int nearest = 0;
        for (int i = 0; i < ring.points().size(); i++) {
            boolean nearer = ring.points().get(i).distance(place)
                    < ring.points().get(nearest).distance(place);
            nearest = nearer ? i : nearest;
        }
        return nearest;
    }
}
