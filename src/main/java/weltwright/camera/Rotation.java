package weltwright.camera;

/**
 * A rotation of space, with what the axes become: many points are turned by it without the sine of one angle.
 *
 * @param rodrigues the axis, its length the angle in radians
 * @param x the first axis turned
 * @param y the second
 * @param z the third
 */
public record Rotation(Vector3 rodrigues, Vector3 x, Vector3 y, Vector3 z) {
    /**
     * The rotation about an axis.
     *
     * @param rodrigues the axis, its length the angle in radians
     */
    public static Rotation about(Vector3 rodrigues) {
        return new Rotation(
                rodrigues,
                new Vector3(1, 0, 0).rotated(rodrigues),
                new Vector3(0, 1, 0).rotated(rodrigues),
                new Vector3(0, 0, 1).rotated(rodrigues));
    }

    /** What the rotation makes of a vector. */
    public Vector3 apply(Vector3 v) {
        return new Vector3(
                v.x() * x.x() + v.y() * y.x() + v.z() * z.x(),
                v.x() * x.y() + v.y() * y.y() + v.z() * z.y(),
                v.x() * x.z() + v.y() * y.z() + v.z() * z.z());
    }

    /** A rotation's transpose undoes it. */
    public Vector3 applyInverse(Vector3 v) {
        return new Vector3(x.dot(v), y.dot(v), z.dot(v));
    }
}
