package weltwright.camera;

/**
 * A rotation of space, with its matrix kept so that many points can be rotated without computing sines.
 *
 * @param rodrigues rotation axis times the angle in radians
 * @param x image of the first unit vector: the matrix's first column
 * @param y image of the second unit vector
 * @param z image of the third unit vector
 */
public record Rotation(Vector3 rodrigues, Vector3 x, Vector3 y, Vector3 z) {
    /**
     * Makes the rotation about an axis.
     *
     * @param rodrigues rotation axis times the angle in radians
     */
    public static Rotation about(Vector3 rodrigues) {
        return new Rotation(
                rodrigues,
                new Vector3(1, 0, 0).rotated(rodrigues),
                new Vector3(0, 1, 0).rotated(rodrigues),
                new Vector3(0, 0, 1).rotated(rodrigues));
    }

    /** Rotates a vector. */
    public Vector3 apply(Vector3 v) {
        return new Vector3(
                v.x() * x.x() + v.y() * y.x() + v.z() * z.x(),
                v.x() * x.y() + v.y() * y.y() + v.z() * z.y(),
                v.x() * x.z() + v.y() * y.z() + v.z() * z.z());
    }

    /** Rotates a vector backwards. */
    public Vector3 applyInverse(Vector3 v) {
        return new Vector3(x.dot(v), y.dot(v), z.dot(v));
    }
}
