package weltwright.layout.collision;

/**
 * Whether two placed shapes collide, and how much.
 *
 * <p>Two shapes collide where two of their edges cross, where one lies inside the other, or where a disc of one reaches
 * into a disc of the other. Edges in line with one another, as of shapes pushed against the same side of a box, would
 * hide a crossing; so one shape is compared as if it lay aside by a distance, {@link #ASIDE}, in which no edge is
 * likely to run. Shapes nearer than that may count as colliding or not.
 *
 * <p>The measure of an overlap is, up to a factor, that of Gardeyn and Wauters ("An open-source heuristic to reboot 2D
 * nesting research", 2025): the depths to which inner discs of one reach into those of the other, each times the lesser
 * radius, as an estimate of the common area; a depth that is not positive counts by a decaying remainder, so that the
 * measure also falls where no discs meet. The square root makes it a length, and the factor for size keeps small shapes
 * from being neglected.
 *
 * <p>Holds scratch space: one instance for each thread.
 */
public final class OverlapMeasure {
    /** Part of the sum of both diameters: far above the rounding of coordinates, far below any cut. */
    private static final double ASIDE = 1e-8;

    /** The direction aside: coordinates whose ratio is no fraction. */
    private static final double ASIDE_X = 0.6180339887;

    private static final double ASIDE_Y = 0.4142135624;

    /** Part of the larger diameter at which the depth of discs begins to decay. After Gardeyn and Wauters 2025. */
    private static final double DECAY_SHARE = 0.01;

    /** Discs of each shape that are compared before the edges are. Measured: more cost more than they save. */
    private static final int FIRST_DISCS = 3;

    private double[] edges = new double[256];

    /**
     * Whether two shapes collide whose bounding boxes overlap.
     *
     * @param dx x of the reference point of {@code b} less that of {@code a}
     * @param dy the same of y
     */
    public boolean collide(TurnedShape a, TurnedShape b, double dx, double dy) {
        double aside = ASIDE * (a.shape.diameter() + b.shape.diameter());
        double asideX = dx + ASIDE_X * aside;
        double asideY = dy + ASIDE_Y * aside;
        return firstDiscsMeet(a, b, dx, dy, aside) || edgesCross(a, b, asideX, asideY) || nested(a, b, asideX, asideY);
    }

    private static boolean firstDiscsMeet(TurnedShape a, TurnedShape b, double dx, double dy, double least) {
        int na = Math.min(FIRST_DISCS, a.discX.length);
        int nb = Math.min(FIRST_DISCS, b.discX.length);
        double[] ra = a.shape.discRadius;
        double[] rb = b.shape.discRadius;
        for (int i = 0; i < na; i++) {
            double x = a.discX[i] - dx;
            double y = a.discY[i] - dy;
            for (int j = 0; j < nb; j++) {
                double ex = b.discX[j] - x;
                double ey = b.discY[j] - y;
                double r = ra[i] + rb[j] - least;
                if (ex * ex + ey * ey < r * r) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Compares the edges of both that reach into the common part of the bounding boxes. */
    private boolean edgesCross(TurnedShape a, TurnedShape b, double dx, double dy) {
        double left = Math.max(a.minX, b.minX + dx);
        double right = Math.min(a.maxX, b.maxX + dx);
        double bottom = Math.max(a.minY, b.minY + dy);
        double top = Math.min(a.maxY, b.maxY + dy);
        int count = edgesInside(b, left - dx, right - dx, bottom - dy, top - dy, dx, dy);
        if (count == 0) {
            return false;
        }
        double[] x = a.x;
        double[] y = a.y;
        int n = x.length;
        double ax = x[n - 1];
        double ay = y[n - 1];
        int side = side(ax, ay, left, right, bottom, top);
        for (int i = 0; i < n; i++) {
            double bx = x[i];
            double by = y[i];
            int next = side(bx, by, left, right, bottom, top);
            if ((side & next) == 0 && crosses(ax, ay, bx, by, count)) {
                return true;
            }
            ax = bx;
            ay = by;
            side = next;
        }
        return false;
    }

    private int edgesInside(TurnedShape b, double left, double right, double bottom, double top, double dx, double dy) {
        double[] x = b.x;
        double[] y = b.y;
        int n = x.length;
        if (edges.length < 4 * n) {
            edges = new double[8 * n];
        }
        double[] out = edges;
        int count = 0;
        double ax = x[n - 1];
        double ay = y[n - 1];
        int side = side(ax, ay, left, right, bottom, top);
        for (int i = 0; i < n; i++) {
            double bx = x[i];
            double by = y[i];
            int next = side(bx, by, left, right, bottom, top);
            if ((side & next) == 0) {
                out[count] = ax + dx;
                out[count + 1] = ay + dy;
                out[count + 2] = bx + dx;
                out[count + 3] = by + dy;
                count += 4;
            }
            ax = bx;
            ay = by;
            side = next;
        }
        return count;
    }

    /** On which sides of a box a point lies outside, as bits (Cohen and Sutherland's code). */
    private static int side(double x, double y, double left, double right, double bottom, double top) {
        return (x < left ? 1 : 0) | (x > right ? 2 : 0) | (y < bottom ? 4 : 0) | (y > top ? 8 : 0);
    }

    private boolean crosses(double ax, double ay, double bx, double by, int count) {
        double[] e = edges;
        double ux = bx - ax;
        double uy = by - ay;
        for (int k = 0; k < count; k += 4) {
            double cx = e[k];
            double cy = e[k + 1];
            double ex = e[k + 2];
            double ey = e[k + 3];
            boolean c = ux * (cy - ay) - uy * (cx - ax) > 0;
            boolean d = ux * (ey - ay) - uy * (ex - ax) > 0;
            if (c != d) {
                double vx = ex - cx;
                double vy = ey - cy;
                boolean from = vx * (ay - cy) - vy * (ax - cx) > 0;
                boolean to = vx * (by - cy) - vy * (bx - cx) > 0;
                if (from != to) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether one shape lies inside the other, where no edges cross: its largest disc then has its centre inside. */
    private static boolean nested(TurnedShape a, TurnedShape b, double dx, double dy) {
        if (a.minX >= b.minX + dx && a.maxX <= b.maxX + dx && a.minY >= b.minY + dy && a.maxY <= b.maxY + dy) {
            return contains(b, a.discX[0] - dx, a.discY[0] - dy);
        }
        if (a.minX <= b.minX + dx && a.maxX >= b.maxX + dx && a.minY <= b.minY + dy && a.maxY >= b.maxY + dy) {
            return contains(a, b.discX[0] + dx, b.discY[0] + dy);
        }
        return false;
    }

    private static boolean contains(TurnedShape a, double px, double py) {
        double[] x = a.x;
        double[] y = a.y;
        boolean inside = false;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            if (y[i] > py != y[j] > py && px < x[i] + (py - y[i]) / (y[j] - y[i]) * (x[j] - x[i])) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** The least measure of any overlap of two shapes. */
    public static double least(TurnedShape a, TurnedShape b) {
        return DECAY_SHARE * Math.max(a.shape.diameter(), b.shape.diameter()) * size(a, b);
    }

    /**
     * The measure of the overlap of two shapes that collide, larger than 0; or infinity as soon as it is known to reach
     * a bound. Displacements as for {@link #collide}.
     */
    public static double measure(TurnedShape a, TurnedShape b, double dx, double dy, double bound) {
        double decay = DECAY_SHARE * Math.max(a.shape.diameter(), b.shape.diameter());
        double decay2 = decay * decay;
        double size = size(a, b);
        double most = ((bound / size) * (bound / size) - decay2) / Math.PI;
        double[] ra = a.shape.discRadius;
        double[] rb = b.shape.discRadius;
        double[] bx = b.discX;
        double[] by = b.discY;
        double sum = 0;
        for (int i = 0; i < ra.length; i++) {
            double x = a.discX[i] - dx;
            double y = a.discY[i] - dy;
            double r = ra[i];
            for (int j = 0; j < rb.length; j++) {
                double ex = bx[j] - x;
                double ey = by[j] - y;
                double depth = r + rb[j] - Math.sqrt(ex * ex + ey * ey);
                double counted = depth >= decay ? depth : decay2 / (2 * decay - depth);
                sum += counted * Math.min(r, rb[j]);
            }
            if (sum >= most) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return Math.sqrt(Math.PI * sum + decay2) * size;
    }

    /** The fourth root of the product of the areas of both hulls. */
    private static double size(TurnedShape a, TurnedShape b) {
        return Math.sqrt(a.shape.hullRoot() * b.shape.hullRoot());
    }
}
