package weltwright.camera;

/** A point or a vector of space, in mm unless stated otherwise. */
public record Vector3(double x, double y, double z) {

    public Vector3 plus(Vector3 other) {
        return new Vector3(x + other.x, y + other.y, z + other.z);
    }

    public Vector3 minus(Vector3 other) {
        return new Vector3(x - other.x, y - other.y, z - other.z);
    }

    public Vector3 times(double factor) {
        return new Vector3(factor * x, factor * y, factor * z);
    }

    public double dot(Vector3 other) {
        return x * other.x + y * other.y + z * other.z;
    }

    public Vector3 cross(Vector3 other) {
        return new Vector3(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    /** Returns the length, in the unit of the coordinates. */
    public double norm() {
        return Math.sqrt(dot(this));
    }

    /**
     * Rotates this vector about an axis by Rodrigues' formula.
     *
     * @param rodrigues rotation axis times the angle in radians
     */
    public Vector3 rotated(Vector3 rodrigues) {
        double angle = rodrigues.norm();
        if (angle == 0) {
            return this;
        }
        Vector3 axis = rodrigues.times(1 / angle);
        double c = Math.cos(angle);
        return times(c).plus(axis.cross(this).times(Math.sin(angle))).plus(axis.times(axis.dot(this) * (1 - c)));
    }
}
