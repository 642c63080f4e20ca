package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds the corners of a measured closed outline by comparing its turning angle over two arc lengths. A corner turns as
 * much within a millimetre as over several; a curve, however tight, turns more the longer the arc.
 *
 * <ol>
 *   <li>Average each point with its neighbours within 0.15 mm, to reduce noise.
 *   <li>At each point measure the angle between the chords of two arms, once for short and once for long arms. The arms
 *       begin at a distance from the point, because a lens rounds the corner itself off.
 *   <li>A point is a candidate if its short turning angle exceeds a limit and most of the long one, or a higher limit.
 *   <li>Keep the candidates whose short turning angle is a local maximum.
 * </ol>
 *
 * <p>Assumes points a few tenths of a millimetre apart with noise of less than a tenth. All limits are chosen by eye.
 */
public final class CornerFinder {
    /** Distances from the point at which a short arm begins and ends. */
    private static final double SHORT_FROM_MM = 0.2;

    private static final double SHORT_TO_MM = 0.8;
    /** Distances from the point at which a long arm begins and ends. */
    private static final double LONG_FROM_MM = 0.6;

    private static final double LONG_TO_MM = 3.2;

    /** Least turning angle of a corner over arms of either length. */
    private static final double LEAST_TURN_RAD = Math.toRadians(30);

    /** A short turning angle above this is a corner, whatever the long one is. */
    private static final double CLEAR_TURN_RAD = Math.toRadians(45);

    /** Least ratio of a corner's short turning angle to its long one. */
    private static final double LEAST_TURN_RATIO = 0.7;

    /** Half the width of the moving average that reduces noise. */
    private static final double SMOOTHING_MM = 0.15;

    /** Least distance between two corners. */
    private static final double LEAST_SPACING_MM = 1.0;

    private final Polyline ring;
    private final double step;
    private final double[] weight;

    /** @param ring closed, its points about equally spaced */
    public CornerFinder(Polyline ring) {
        this(ring, ones(ring.points().size()));
    }

    /** @param weight of each point, from 0 to 1; the square root of the mean near a point scales its turning angles */
    public CornerFinder(Polyline ring, double[] weight) {
        this.weight = weight;
        this.step = ring.lengthMm() / ring.points().size();
        this.ring = averaged(ring, step);
    }

    private static Polyline averaged(Polyline ring, double step) {
        List<Point> points = ring.points();
        int reach = (int) Math.round(SMOOTHING_MM / step);
        List<Point> averaged = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point sum = new Point(0, 0);
            for (int k = -reach; k <= reach; k++) {
                sum = sum.plus(points.get(Math.floorMod(i + k, points.size())));
            }
            averaged.add(sum.times(1.0 / (2 * reach + 1)));
        }
        return Polyline.closed(averaged);
    }

    /** The indices of the points at corners, in ascending order; possibly none. */
    public List<Integer> find() {
        int n = ring.points().size();
        double[] strength = new double[n];
        for (int i = 0; i < n; i++) {
            double scale = rootMeanWeight(i);
            double shortTurn = scale * Math.abs(turn(i, SHORT_FROM_MM, SHORT_TO_MM));
            double longTurn = scale * Math.abs(turn(i, LONG_FROM_MM, LONG_TO_MM));
            boolean corner =
                    shortTurn > LEAST_TURN_RATIO * longTurn && shortTurn > LEAST_TURN_RAD && longTurn > LEAST_TURN_RAD;
            // The two corners of a small step cancel over long arms, but not over short ones.
            strength[i] = corner || shortTurn > CLEAR_TURN_RAD ? shortTurn : 0;
        }
        List<Integer> corners = new ArrayList<>();
        int spacing = (int) Math.ceil(LEAST_SPACING_MM / step);
        for (int i = 0; i < n; i++) {
            if (strength[i] > 0 && isLocalMaximum(strength, i, spacing)) {
                corners.add(i);
            }
        }
        return corners;
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    /** The square root of the mean weight over the short arms. */
    private double rootMeanWeight(int index) {
        int reach = (int) Math.max(1, Math.round(SHORT_TO_MM / step));
        double sum = 0;
        for (int k = -reach; k <= reach; k++) {
            sum += weight[Math.floorMod(index + k, weight.length)];
        }
        return Math.sqrt(sum / (2 * reach + 1));
    }

    private double turn(int index, double from, double to) {
        int a = (int) Math.round(from / step);
        int b = (int) Math.max(a + 1, Math.round(to / step));
        Point before = point(index - a).minus(point(index - b));
        Point after = point(index + b).minus(point(index + a));
        return Math.atan2(before.cross(after), before.dot(after));
    }

    private static boolean isLocalMaximum(double[] strength, int i, int reach) {
        for (int k = 1; k <= reach; k++) {
            double before = strength[Math.floorMod(i - k, strength.length)];
            double after = strength[(i + k) % strength.length];
            if (before >= strength[i] || after > strength[i]) {
                return false;
            }
        }
        return true;
    }

    private Point point(int i) {
        return ring.points().get(Math.floorMod(i, ring.points().size()));
    }
}
