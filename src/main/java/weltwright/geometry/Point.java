package weltwright.geometry;

import org.locationtech.jts.geom.Coordinate;

/**
 * A point of the plane, or a vector in it. In mm, unless it is said to be in pixels.
 *
 * <p>JTS has {@link Coordinate}, which can be changed by whoever holds it; values here cannot.
 */
public record Point(double x, double y) {

    public Point plus(Point other) {
        return new Point(x + other.x, y + other.y);
    }

    public Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    public Point times(double factor) {
        return new Point(factor * x, factor * y);
    }

    public double dot(Point other) {
        return x * other.x + y * other.y;
    }

    /** The z component of the cross product: positive where {@code other} lies counter-clockwise of this. */
    public double cross(Point other) {
        return x * other.y - y * other.x;
    }

    /** Without the care of {@link Math#hypot}, which takes many times as long: no square of a length here overflows. */
    public double norm() {
        return Math.sqrt(x * x + y * y);
    }

    /** In the unit of both. */
    public double distance(Point other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** The vector of length 1 in this direction; NaN for the zero vector. */
    public Point unit() {
        return times(1 / norm());
    }

    /** Turned by a quarter counter-clockwise: the left normal of a direction. */
    public Point left() {
        return new Point(-y, x);
    }

    /** The point at the fraction {@code t} of the way from here to {@code other}. */
    public Point towards(Point other, double t) {
        return new Point(x + t * (other.x - x), y + t * (other.y - y));
    }

    /** The same for JTS. */
    public Coordinate coordinate() {
        return new Coordinate(x, y);
    }

    public static Point of(Coordinate coordinate) {
        return new Point(coordinate.x, coordinate.y);
    }
}
