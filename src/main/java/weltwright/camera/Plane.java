package weltwright.camera;

import weltwright.geometry.Point;

/**
 * A plane over the ground that is nowhere upright: z = height + slope · (x, y) in the ground frame.
 *
 * @param heightMm z over the ground's origin
 * @param slope the gradient: mm up for each mm along x and along y
 */
public record Plane(double heightMm, Point slope) {
    /** The ground itself. */
    public static final Plane GROUND = new Plane(0, new Point(0, 0));

    /** The point of the plane over a place of the ground, in mm. */
    public Vector3 pointAbove(Point p) {
        return new Vector3(p.x(), p.y(), heightMm + slope.dot(p));
    }

    /** The point at which the line through {@code eye} along {@code ray} meets the plane; its x and y. */
    Point intersection(Vector3 eye, Vector3 ray) {
        double climb = ray.z() - slope.x() * ray.x() - slope.y() * ray.y();
        double gap = heightMm + slope.x() * eye.x() + slope.y() * eye.y() - eye.z();
        double t = gap / climb;
        return new Point(eye.x() + t * ray.x(), eye.y() + t * ray.y());
    }
}
