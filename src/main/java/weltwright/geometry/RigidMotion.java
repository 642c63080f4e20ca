package weltwright.geometry;

/**
 * A rigid motion of the plane: a rotation about the origin followed by a translation, without scale or reflection.
 *
 * @param angleRad the rotation, counter-clockwise, in radians
 * @param shift the image of the origin, in mm
 */
public record RigidMotion(double angleRad, Point shift) {

    /** The image of a point, in mm. */
    public Point apply(Point p) {
        return rotate(p).plus(shift);
    }

    /** The image of a vector: rotated, not translated. */
    public Point rotate(Point v) {
        double c = Math.cos(angleRad);
        double s = Math.sin(angleRad);
        return new Point(c * v.x() - s * v.y(), s * v.x() + c * v.y());
    }

    /** The inverse motion. */
    public RigidMotion inverse() {
        Point back = new RigidMotion(-angleRad, new Point(0, 0)).rotate(shift);
        return new RigidMotion(-angleRad, back.times(-1));
    }
}
