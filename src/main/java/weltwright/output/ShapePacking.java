package weltwright.output;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;

/**
 * Places a shape in a free area: the first position in which the area covers the shape, in the order of the directions,
 * then from top to bottom, then from left to right. Positions are on a grid of at most 3 mm that includes the limits of
 * the area's bounding box.
 */
public final class ShapePacking {
    /** Greatest step of the grid. Chosen by eye. */
    private static final double STEP_MM = 3;

    /** The directions 0°, 90°, 180° and 270°, in radians. */
    public static final List<Double> QUARTERS =
            IntStream.range(0, 4).mapToObj(i -> i * Math.PI / 2).toList();

    /** The other multiples of 7.5°: a long piece may fit along the diagonal. */
    public static final List<Double> ASLANT = IntStream.range(0, 48)
            .filter(i -> i % 12 != 0)
            .mapToObj(i -> i * Math.PI / 24)
            .toList();

    private ShapePacking() {}

    /**
     * Finds a placement.
     *
     * @param directions angles in radians by which the shape may be rotated, in order of preference
     * @return the motion of the shape, or empty if it fits nowhere
     */
    public static Optional<RigidMotion> find(Geometry shape, Geometry area, List<Double> directions) {
        if (area.isEmpty()) {
            return Optional.empty();
        }
        PreparedGeometry inside = PreparedGeometryFactory.prepare(area);
        PointOnGeometryLocator locator = new IndexedPointInAreaLocator(area);
        Envelope room = area.getEnvelopeInternal();
        for (double direction : directions) {
            Geometry turned = AffineTransformation.rotationInstance(direction).transform(shape);
            Envelope box = turned.getEnvelopeInternal();
            double slackX = room.getWidth() - box.getWidth();
            double slackY = room.getHeight() - box.getHeight();
            if (slackX < 0 || slackY < 0) {
                continue;
            }
            Geometry moved = turned.copy();
            // The geometry's own coordinates, which move with it.
            Coordinate[] vertices = moved.getCoordinates();
            Point at = new Point(0, 0);
            for (double down : steps(slackY)) {
                for (double right : steps(slackX)) {
                    Point to = new Point(room.getMinX() - box.getMinX() + right, room.getMaxY() - box.getMaxY() - down);
                    shift(moved, to.minus(at));
                    at = to;
                    if (areCovered(vertices, locator) && inside.covers(moved)) {
                        return Optional.of(new RigidMotion(direction, to));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Returns whether no vertex lies outside of the area. A vertex that does is moved to the front of the array, since
     * it is the one most likely to lie outside at the next place, too. This tells most places apart at a fraction of
     * the time of {@code covers}.
     */
    private static boolean areCovered(Coordinate[] vertices, PointOnGeometryLocator locator) {
        for (int i = 0; i < vertices.length; i++) {
            Coordinate vertex = vertices[i];
            if (locator.locate(vertex) == Location.EXTERIOR) {
                vertices[i] = vertices[0];
                vertices[0] = vertex;
                return false;
            }
        }
        return true;
    }

    /** Applies a placement to a shape. */
    public static Geometry moved(Geometry shape, RigidMotion place) {
        return AffineTransformation.rotationInstance(place.angleRad())
                .translate(place.shift().x(), place.shift().y())
                .transform(shape);
    }

    private static void shift(Geometry geometry, Point by) {
        geometry.apply((Coordinate c) -> {
            c.x += by.x();
            c.y += by.y();
        });
        geometry.geometryChanged();
    }

    private static double[] steps(double slack) {
        int n = (int) Math.ceil(slack / STEP_MM);
        return IntStream.rangeClosed(0, n)
                .mapToDouble(i -> n == 0 ? 0 : slack * i / n)
                .toArray();
    }
}
