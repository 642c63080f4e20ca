package weltwright.layout.collision;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Collisions held against areas that JTS finds common to both polygons. */
class OverlapMeasureTest {
    private static final List<Point> BAR = box(0, 0, 10, 4);

    private static final List<Point> CROSS = List.of(
            new Point(2, 0),
            new Point(4, 0),
            new Point(4, 2),
            new Point(6, 2),
            new Point(6, 4),
            new Point(4, 4),
            new Point(4, 6),
            new Point(2, 6),
            new Point(2, 4),
            new Point(0, 4),
            new Point(0, 2),
            new Point(2, 2));

    private static final List<List<Point>> RASTER_SHAPES = List.of(
            CROSS,
            BAR,
            box(0, 0, 1, 4),
            List.of(new Point(0, 0), new Point(4, 0), new Point(0, 4)),
            List.of(
                    new Point(0, 0),
                    new Point(5, 0),
                    new Point(5, 3),
                    new Point(3, 3),
                    new Point(3, 5),
                    new Point(0, 5)));

    /** Of the raster's shapes, each with its discs, which take long to find. */
    private static final List<OutlineShape> RASTER_OUTLINES =
            RASTER_SHAPES.stream().map(OutlineShape::of).toList();

    private final OverlapMeasure measure = new OverlapMeasure();

    private static List<Point> box(double x0, double y0, double x1, double y1) {
        return List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1));
    }

    private static boolean boxesMeet(TurnedShape a, TurnedShape b, double dx, double dy) {
        return a.minX() < b.maxX() + dx
                && a.maxX() > b.minX() + dx
                && a.minY() < b.maxY() + dy
                && a.maxY() > b.minY() + dy;
    }

    private boolean collide(TurnedShape a, TurnedShape b, double dx, double dy) {
        return boxesMeet(a, b, dx, dy) && measure.collide(a, b, dx, dy);
    }

    private static Geometry placed(List<Point> corners, TurnedShape shape, double dx, double dy) {
        Point reference = shape.shape().reference();
        return AffineTransformation.translationInstance(-reference.x(), -reference.y())
                .rotate(shape.turnRad())
                .translate(dx, dy)
                .transform(Polyline.closed(corners).polygon());
    }

    @Property(tries = 500)
    void collideWhereJtsFindsCommonArea(@ForAll long seed) {
        Random random = new Random(seed);
        List<Point> first = RandomShapes.star(random, 10);
        List<Point> second = RandomShapes.star(random, 2 + 10 * random.nextDouble());
        TurnedShape a = new TurnedShape(OutlineShape.of(first), 7 * random.nextDouble());
        TurnedShape b = new TurnedShape(OutlineShape.of(second), 7 * random.nextDouble());
        double dx = 15 * random.nextGaussian();
        double dy = 15 * random.nextGaussian();

        double common =
                placed(first, a, 0, 0).intersection(placed(second, b, dx, dy)).getArea();

        // Far below the 0.01 mm that leather may overlap, and above what rounding yields.
        if (common > 1e-9 || common == 0) {
            assertThat(collide(a, b, dx, dy)).isEqualTo(common > 0);
            assertThat(collide(b, a, -dx, -dy)).isEqualTo(common > 0);
        }
    }

    @Property(tries = 500)
    void discsLieInsideAndApart(@ForAll long seed) {
        List<Point> corners = RandomShapes.star(new Random(seed), 10);
        OutlineShape shape = OutlineShape.of(corners);
        Geometry polygon = placed(corners, new TurnedShape(shape, 0), 0, 0);
        for (int i = 0; i < shape.discX.length; i++) {
            var centre = polygon.getFactory().createPoint(new Point(shape.discX[i], shape.discY[i]).coordinate());
            assertThat(polygon.contains(centre)).isTrue();
            assertThat(polygon.getBoundary().distance(centre)).isGreaterThan(shape.discRadius[i] - 1e-9);
            for (int j = 0; j < i; j++) {
                assertThat(Math.hypot(shape.discX[i] - shape.discX[j], shape.discY[i] - shape.discY[j]))
                        .isGreaterThan(shape.discRadius[i] + shape.discRadius[j] - 1e-9);
            }
        }
    }

    /** The largest disc in a right-angled triangle has the radius (a + b - c) / 2 (Euclid IV.4). */
    @Test
    void theFirstDiscIsTheInscribedCircle() {
        OutlineShape triangle = OutlineShape.of(List.of(new Point(0, 0), new Point(3, 0), new Point(0, 4)));

        assertThat(triangle.discRadius[0]).isBetween(0.98, 1.0);
    }

    @Test
    void barsApartDoNotCollideBarsThatShareTheirEdgesDo() {
        TurnedShape bar = new TurnedShape(OutlineShape.of(BAR), 0);

        assertThat(collide(bar, bar, 10.00001, 0)).isFalse();
        assertThat(collide(bar, bar, 0, 4.00001)).isFalse();
        assertThat(collide(bar, bar, 10.00001, 4)).isFalse();
        assertThat(collide(bar, bar, 9.99, 0)).isTrue();
        assertThat(collide(bar, bar, -9.99, 0)).isTrue();
        assertThat(collide(bar, bar, 0, 3.99)).isTrue();
        assertThat(collide(bar, bar, 0, 0)).isTrue();
    }

    /** On a raster, edges lie in line and corners on edges, which random places never do. */
    @Property(tries = 1500)
    void collideWhereEdgesLieInLine(@ForAll long seed) {
        Random random = new Random(seed);
        int one = random.nextInt(RASTER_SHAPES.size());
        int other = random.nextInt(RASTER_SHAPES.size());
        List<Point> first = RASTER_SHAPES.get(one);
        List<Point> second = RASTER_SHAPES.get(other);
        TurnedShape a = new TurnedShape(RASTER_OUTLINES.get(one), Math.PI / 2 * random.nextInt(4));
        TurnedShape b = new TurnedShape(RASTER_OUTLINES.get(other), Math.PI / 2 * random.nextInt(4));
        double dx = 0.5 * (random.nextInt(17) - 8);
        double dy = 0.5 * (random.nextInt(17) - 8);

        // Whether those that merely touch collide is left open.
        if (placed(first, a, 0, 0).intersection(placed(second, b, dx, dy)).getArea() > 1e-6) {
            assertThat(collide(a, b, dx, dy)).isTrue();
        }
        if (placed(first, a, 0, 0).distance(placed(second, b, dx, dy)) > 1e-6) {
            assertThat(collide(a, b, dx, dy)).isFalse();
        }
    }

    @Test
    void aShapeInsideAnotherCollidesOneInItsNotchDoesNot() {
        TurnedShape large = new TurnedShape(OutlineShape.of(box(0, 0, 100, 100)), 0);
        TurnedShape small = new TurnedShape(OutlineShape.of(box(0, 0, 1, 1)), 0.3);
        List<Point> channel = List.of(
                new Point(0, 0),
                new Point(30, 0),
                new Point(30, 30),
                new Point(20, 30),
                new Point(20, 10),
                new Point(10, 10),
                new Point(10, 30),
                new Point(0, 30));
        TurnedShape notched = new TurnedShape(OutlineShape.of(channel), 0);

        assertThat(collide(large, small, 48, 48)).isTrue();
        assertThat(collide(small, large, -48, -48)).isTrue();
        assertThat(collide(notched, small, 0, 5)).isFalse();
        assertThat(collide(notched, small, 10, 5)).isTrue();
    }

    @Test
    void theMeasureFallsAsShapesMoveApart() {
        TurnedShape bar = new TurnedShape(OutlineShape.of(BAR), 0);
        double before = Double.POSITIVE_INFINITY;
        for (double dx = 0; dx < 10; dx += 0.5) {
            double now = OverlapMeasure.measure(bar, bar, dx, 0.1, Double.POSITIVE_INFINITY);
            assertThat(now).isLessThan(before).isGreaterThanOrEqualTo(OverlapMeasure.least(bar, bar));
            before = now;
        }
    }

    @Property(tries = 500)
    void aMeasureBeyondItsBoundIsInfinite(@ForAll long seed) {
        Random random = new Random(seed);
        TurnedShape a = new TurnedShape(OutlineShape.of(RandomShapes.star(random, 10)), 0);
        TurnedShape b = new TurnedShape(OutlineShape.of(RandomShapes.star(random, 10)), 1);
        double full = OverlapMeasure.measure(a, b, 3, 2, Double.POSITIVE_INFINITY);

        assertThat(OverlapMeasure.measure(a, b, 3, 2, 0.99 * full)).isInfinite();
        assertThat(OverlapMeasure.measure(a, b, 3, 2, 1.01 * full)).isEqualTo(full);
    }

    @Test
    void repeatedCornersAndDirectionDoNotMatter() {
        OutlineShape bar = OutlineShape.of(List.of(
                new Point(0, 0),
                new Point(0, 4),
                new Point(0, 4),
                new Point(10, 4),
                new Point(10, 0),
                new Point(0, 0)));

        assertThat(bar.area()).isEqualTo(40);
        assertThat(bar.x).hasSize(4);
        assertThat(bar.diameter()).isEqualTo(Math.hypot(10, 4));
    }
}
