package weltwright.ground;

/** A point of space, or a vector in it. In mm, unless it is said to be an axis times an angle. */
public record Vector3(double x, double y, double z) {}
