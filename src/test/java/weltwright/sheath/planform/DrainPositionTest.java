package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;

/** Common practice: 3 mm of leather between hole and knife; half a millimetre of that may be lost in laying flat. */
class DrainPositionTest {
    private static final double RADIUS = 2;
    private static final double AWAY = RADIUS + 3 + 0.5;
    private static final double BAY = 1.7;
    private static final GeometryFactory JTS = new GeometryFactory();

    @Test
    void betweenPanelsTheHoleIsStraightPastTheTip() {
        assertThat(DrainPosition.pastTip(new Point(100, 3), RADIUS)).isEqualTo(new Point(100 + AWAY, 3));
    }

    /**
     * Of all places at that distance from the tip, in steps of 5 degrees, at least as far from the rest of the knife
     * and not too near to the fold, none makes the end of the open body smaller. Distances, hulls and areas are those
     * of JTS; its discs have fewer corners.
     */
    @ParameterizedTest
    @ValueSource(strings = {"clip", "upswept", "dropped", "recurve"})
    void inAFoldTheHoleIsWhereItMakesTheEndSmallest(String shape) {
        Knife knife = TestKnives.shapes().get(shape);
        Cavity swept = new Cavity(knife, 0, 0.8);
        double fold = swept.highestSpineMm() + 0.8;
        double highest = fold - 3;
        List<Point> nose = Stream.of(swept.sweptEdge(), swept.sweptSpine())
                .flatMap(side -> side.points().stream())
                .filter(p -> p.x() > swept.tip().x() - 30)
                .toList();
        Point hole = DrainPosition.inFold(swept, RADIUS, BAY, nose, fold, highest);

        assertThat(isClear(swept, hole, highest)).isTrue();
        for (int deg = -180; deg < 180; deg += 5) {
            double angle = Math.toRadians(deg);
            Point other = swept.tip().plus(new Point(Math.cos(angle), Math.sin(angle)).times(AWAY));
            if (isClear(swept, other, highest)) {
                assertThat(endMm2(hole, nose, fold)).as("%s", deg).isLessThan(endMm2(other, nose, fold) + 2);
            }
        }
    }

    private static boolean isClear(Cavity swept, Point hole, double highestMm) {
        Geometry at = JTS.createPoint(hole.coordinate());
        return hole.y() + RADIUS <= highestMm + 1e-9
                && swept.sweptEdge().lineString().distance(at) > AWAY - 1e-5
                && swept.sweptSpine().lineString().distance(at) > AWAY - 1e-5;
    }

    private static double endMm2(Point hole, List<Point> nose, double foldMm) {
        Geometry half = JTS.createMultiPointFromCoords(
                        nose.stream().map(Point::coordinate).toArray(Coordinate[]::new))
                .union(JTS.createPoint(hole.coordinate()).buffer(BAY));
        Geometry other = half.copy();
        other.apply((Coordinate c) -> c.y = 2 * foldMm - c.y);
        other.geometryChanged();
        return JTS.createGeometryCollection(new Geometry[] {half, other})
                .convexHull()
                .getArea();
    }
}
