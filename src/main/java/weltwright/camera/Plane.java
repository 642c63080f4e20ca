package weltwright.camera;

import weltwright.geometry.Point;

/**
 * A plane that is not vertical: z = height + slope · (x, y) in the ground frame.
 *
 * @param heightMm z above the ground's origin
 * @param slope gradient of z along x and y, without unit
 */
public record Plane(double heightMm, Point slope) {
    /** The plane of the ground. */
    public static final Plane GROUND = new Plane(0, new Point(0, 0));

    /** Returns the point of the plane that lies above a point of the ground, in mm. */
    public Vector3 pointAbove(Point p) {
        return new Vector3(p.x(), p.y(), heightMm + slope.dot(p));
    }

    /** Intersects the line through {@code eye} along {@code ray}; returns x and y. */
    Point intersection(Vector3 eye, Vector3 ray) {
        double climb = ray.z() - slope.x() * ray.x() - slope.y() * ray.y();
        double gap = heightMm + slope.x() * eye.x() + slope.y() * eye.y() - eye.z();
        double t = gap / climb;
        return new Point(eye.x() + t * ray.x(), eye.y() + t * ray.y());
    }
}
