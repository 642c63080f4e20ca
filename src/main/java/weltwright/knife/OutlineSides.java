package weltwright.knife;

import java.util.Arrays;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The upper and lower side of an outline that lies along the x axis, as functions of x. They are tabulated once, in one
 * pass over the outline, for many look-ups.
 *
 * <p>Where a vertical line crosses the outline more than twice, the outermost crossings count.
 */
public final class OutlineSides {
    /** Spacing of the table. Chosen by eye. */
    private static final double STEP_MM = 0.05;

    private final double fromX;
    private final double[] upper;
    private final double[] lower;

    /** @param outline closed, x along the knife, in mm */
    public OutlineSides(Polyline outline) {
        var xs = outline.points().stream().mapToDouble(Point::x).summaryStatistics();
        fromX = xs.getMin();
        int n = (int) Math.floor((xs.getMax() - fromX) / STEP_MM) + 1;
        upper = new double[n];
        lower = new double[n];
        Arrays.fill(upper, Double.NEGATIVE_INFINITY);
        Arrays.fill(lower, Double.POSITIVE_INFINITY);
        Point before = outline.points().get(outline.points().size() - 1);
        for (Point p : outline.points()) {
            tabulate(before, p);
            before = p;
        }
    }

    private void tabulate(Point a, Point b) {
        Point left = a.x() < b.x() ? a : b;
        Point right = a.x() < b.x() ? b : a;
        int first = (int) Math.ceil((left.x() - fromX) / STEP_MM);
        int last = (int) Math.min(upper.length - 1, Math.floor((right.x() - fromX) / STEP_MM));
        for (int i = first; i <= last; i++) {
            double width = right.x() - left.x();
            double t = width == 0 ? 0 : (fromX + i * STEP_MM - left.x()) / width;
            double y = left.y() + t * (right.y() - left.y());
            upper[i] = Math.max(upper[i], y);
            lower[i] = Math.min(lower[i], y);
        }
    }

    /** Returns the greatest y at x; beyond the ends, that of the nearest end. */
    public double upper(double x) {
        return at(upper, x);
    }

    /** Returns the least y at x; beyond the ends, that of the nearest end. */
    public double lower(double x) {
        return at(lower, x);
    }

    /** Returns the y half way between both sides. */
    public double middle(double x) {
        return (upper(x) + lower(x)) / 2;
    }

    /** Returns the distance between both sides. */
    public double width(double x) {
        return upper(x) - lower(x);
    }

    /** Returns the distance of one side from the axis, outward positive. */
    public double outward(boolean above, double x) {
        return above ? upper(x) : -lower(x);
    }

    private double at(double[] side, double x) {
        double i = Math.max(0, Math.min(side.length - 1, (x - fromX) / STEP_MM));
        int below = (int) Math.min(side.length - 2, Math.floor(i));
        return side[below] + (i - below) * (side[below + 1] - side[below]);
    }
}
