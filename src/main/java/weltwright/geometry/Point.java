package weltwright.geometry;

import org.locationtech.jts.geom.Coordinate;

/**
 * A point or a vector in the plane. Coordinates are in mm unless a name ends in Px.
 *
 * <p>An immutable counterpart of the JTS class {@link Coordinate}, which is mutable.
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

    /**
     * The length of the vector. Does not use {@link Math#hypot}, which is several times slower and guards against an
     * overflow that lengths in mm or pixels cannot cause.
     */
    public double norm() {
        return Math.sqrt(x * x + y * y);
    }

    /** The Euclidean distance to another point, in the unit of both. */
    public double distance(Point other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** The vector of length 1 in this direction; NaN for the zero vector. */
    public Point unit() {
        return times(1 / norm());
    }

    /** The vector rotated counter-clockwise by 90 degrees: the left normal of a direction. */
    public Point left() {
        return new Point(-y, x);
    }

    /** Interpolates linearly between this point ({@code t} = 0) and {@code other} ({@code t} = 1). */
    public Point towards(Point other, double t) {
        return new Point(x + t * (other.x - x), y + t * (other.y - y));
    }

    /** This point as a new JTS coordinate. */
    public Coordinate coordinate() {
        return new Coordinate(x, y);
    }

    public static Point of(Coordinate coordinate) {
        return new Point(coordinate.x, coordinate.y);
    }
}
