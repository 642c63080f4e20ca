package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/** A bar of 100 by 20 mm that hides a line of 0.8 mm each 10 mm, with curves that follow it at known distances. */
class LineEndDisplacementTest {
    private static final double PITCH_MM = 10;
    private static final double HALF_LENGTH_MM = 50;
    private static final double HALF_WIDTH_MM = 10;

    /** Distance from a line's middle at which a curve that bulges there has left its flat part. */
    private static final double TOP_MM = 0.7;

    /** Distance from a line's middle at which a bulge begins. */
    private static final double FOOT_MM = 1.5;

    private record Bar() implements GroundAppearance {
        @Override
        public Point groundPoint(Point pixel) {
            return pixel;
        }

        @Override
        public GroundPrint printAt(Point place) {
            return GroundPrint.LINE;
        }

        @Override
        public double lineVisibilityAt(Point place) {
            boolean isHidden = Math.abs(place.x()) < HALF_LENGTH_MM && Math.abs(place.y()) < HALF_WIDTH_MM;
            return fromLine(place.x()) > 0.4 ? 0 : isHidden ? -1 : 1;
        }

        @Override
        public double[] lineColour() {
            return new double[3];
        }

        @Override
        public boolean isSteelGrey() {
            return true;
        }
    }

    private static double fromLine(double x) {
        return Math.abs(x / PITCH_MM - Math.floor(x / PITCH_MM) - 0.5) * PITCH_MM;
    }

    /** Returns a curve at a distance inside of the bar's long sides that depends on x; its ends are the bar's. */
    private static Polyline inside(DoubleUnaryOperator offMm) {
        List<Point> below = new ArrayList<>();
        List<Point> above = new ArrayList<>();
        for (double x = -HALF_LENGTH_MM; x <= HALF_LENGTH_MM; x += 0.1) {
            double y = HALF_WIDTH_MM - offMm.applyAsDouble(x);
            below.add(new Point(x, -y));
            above.add(0, new Point(x, y));
        }
        below.addAll(above);
        return Polyline.closed(below);
    }

    /** Returns a distance that is 0 at each line, where a curve bulges to the line's end. */
    private static double bulging(double x, double offMm) {
        return offMm * Math.max(0, Math.min(1, (fromLine(x) - TOP_MM) / (FOOT_MM - TOP_MM)));
    }

    /** Returns the greatest distance of a curve from the bar's long sides, between the outermost lines. */
    private static double offMm(Polyline curve) {
        return curve.points().stream()
                .filter(p -> Math.abs(p.x()) < HALF_LENGTH_MM - PITCH_MM / 2)
                .mapToDouble(p -> Math.abs(Math.abs(p.y()) - HALF_WIDTH_MM))
                .max()
                .orElseThrow();
    }

    @Test
    void leavesACurveAtWhichTheLinesEnd() {
        assertThat(LineEndDisplacement.displaced(inside(x -> 0), new Bar())).isEmpty();
    }

    /** Its lines end at the curve itself, so nothing tells that it is off elsewhere. */
    @Test
    void leavesACurveThatIsOffWithoutBulges() {
        assertThat(LineEndDisplacement.displaced(inside(x -> 0.2 * Math.sin(x / 10)), new Bar()))
                .isEmpty();
    }

    @Test
    void leavesBulgesAtTwoLines() {
        assertThat(LineEndDisplacement.displaced(inside(x -> x < -PITCH_MM * 4 ? bulging(x, 1) : 0), new Bar()))
                .isEmpty();
    }

    @Test
    void movesACurveInsideOfTheEdgeOutwards() {
        Polyline followed = inside(x -> bulging(x, 1));
        assertThat(offMm(followed)).isGreaterThan(0.9);
        assertThat(LineEndDisplacement.displaced(followed, new Bar()))
                .hasValueSatisfying(moved -> assertThat(offMm(moved)).isLessThan(0.1));
    }

    /** As the border of a shadow does. */
    @Test
    void movesACurveOutsideOfTheEdgeInwards() {
        Polyline followed = inside(x -> bulging(x, -0.8));
        assertThat(LineEndDisplacement.displaced(followed, new Bar()))
                .hasValueSatisfying(moved -> assertThat(offMm(moved)).isLessThan(0.1));
    }
}
