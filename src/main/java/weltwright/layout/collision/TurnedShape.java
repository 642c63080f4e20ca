package weltwright.layout.collision;

/** A shape turned about its reference point, with its bounding box about that point. Immutable. */
public final class TurnedShape {
    final OutlineShape shape;
    final double[] x;
    final double[] y;
    final double[] discX;
    final double[] discY;
    final double minX;
    final double minY;
    final double maxX;
    final double maxY;
    private final double turnRad;

    /** Turns a shape counter-clockwise. */
    public TurnedShape(OutlineShape shape, double turnRad) {
        this.shape = shape;
        this.turnRad = turnRad;
        double c = exact(Math.cos(turnRad));
        double s = exact(Math.sin(turnRad));
        int n = shape.x.length;
        x = new double[n];
        y = new double[n];
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            double tx = c * shape.x[i] - s * shape.y[i];
            double ty = s * shape.x[i] + c * shape.y[i];
            x[i] = tx;
            y[i] = ty;
            left = Math.min(left, tx);
            right = Math.max(right, tx);
            bottom = Math.min(bottom, ty);
            top = Math.max(top, ty);
        }
        minX = left;
        maxX = right;
        minY = bottom;
        maxY = top;
        int discs = shape.discX.length;
        discX = new double[discs];
        discY = new double[discs];
        for (int i = 0; i < discs; i++) {
            discX[i] = c * shape.discX[i] - s * shape.discY[i];
            discY[i] = s * shape.discX[i] + c * shape.discY[i];
        }
    }

    /** Quarter turns keep whole coordinates whole. */
    private static double exact(double value) {
        double whole = Math.rint(value);
        return Math.abs(value - whole) < 1e-12 ? whole : value;
    }

    public OutlineShape shape() {
        return shape;
    }

    public double turnRad() {
        return turnRad;
    }

    public double minX() {
        return minX;
    }

    public double minY() {
        return minY;
    }

    public double maxX() {
        return maxX;
    }

    public double maxY() {
        return maxY;
    }

    public double width() {
        return maxX - minX;
    }

    public double height() {
        return maxY - minY;
    }
}
