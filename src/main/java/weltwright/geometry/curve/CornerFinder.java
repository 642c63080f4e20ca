package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds the true corners of a measured closed outline: places where it turns within a millimetre by as much as it turns
 * over several. A curve, however tight, turns more the longer the stretch that is looked at; a corner does not.
 *
 * <p>Made for points a few tenths of a millimetre apart with noise below a tenth. Turns are measured between the chords
 * of two arms, which leave out the points right at the corner because a lens rounds them off.
 */
public final class CornerFinder {
    private static final double SHORT_FROM_MM = 0.2;
    private static final double SHORT_TO_MM = 0.8;
    private static final double LONG_FROM_MM = 0.6;
    private static final double LONG_TO_MM = 3.2;

    private static final double LEAST_TURN_RAD = Math.toRadians(30);
    private static final double CLEAR_TURN_RAD = Math.toRadians(45);

    /** How much of its turn over long arms a corner makes within the short ones. */
    private static final double SHARPNESS = 0.7;

    private static final double STEADIED_MM = 0.15;

    /** Two corners are at least this far apart. */
    private static final double APART_MM = 1.0;

    private final Polyline ring;
    private final double step;
    private final double[] weight;

    /** @param ring closed, its points at about equal distances */
    public CornerFinder(Polyline ring) {
        this(ring, ones(ring.points().size()));
    }

    /** @param weight how far each point is to be trusted, from 0 to 1: where they are not, a turn must be clearer */
    public CornerFinder(Polyline ring, double[] weight) {
        this.weight = weight;
        this.step = ring.lengthMm() / ring.points().size();
        this.ring = steadied(ring, step);
    }

    /** Each point averaged with its nearest neighbours, or noise would make corners. */
    private static Polyline steadied(Polyline ring, double step) {
        List<Point> points = ring.points();
        int reach = (int) Math.round(STEADIED_MM / step);
        List<Point> steady = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point sum = new Point(0, 0);
            for (int k = -reach; k <= reach; k++) {
                sum = sum.plus(points.get(Math.floorMod(i + k, points.size())));
            }
            steady.add(sum.times(1.0 / (2 * reach + 1)));
        }
        return Polyline.closed(steady);
    }

    /** Indices of the points at corners, rising; possibly none. */
    public List<Integer> find() {
        int n = ring.points().size();
        double[] strength = new double[n];
        for (int i = 0; i < n; i++) {
            double trust = trust(i);
            double near = trust * Math.abs(turn(i, SHORT_FROM_MM, SHORT_TO_MM));
            double far = trust * Math.abs(turn(i, LONG_FROM_MM, LONG_TO_MM));
            boolean corner = near > SHARPNESS * far && near > LEAST_TURN_RAD && far > LEAST_TURN_RAD;
            // Two corners of a small step cancel out over long arms, but each is clear over short ones.
            strength[i] = corner || near > CLEAR_TURN_RAD ? near : 0;
        }
        List<Integer> corners = new ArrayList<>();
        int apart = (int) Math.ceil(APART_MM / step);
        for (int i = 0; i < n; i++) {
            if (strength[i] > 0 && isGreatest(strength, i, apart)) {
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

    /** The root of the mean weight over the short arms. */
    private double trust(int index) {
        int reach = (int) Math.max(1, Math.round(SHORT_TO_MM / step));
        double sum = 0;
        for (int k = -reach; k <= reach; k++) {
            sum += weight[Math.floorMod(index + k, weight.length)];
        }
        return Math.sqrt(sum / (2 * reach + 1));
    }

    /** The turn at a point over long arms, in radians; positive to the left. */
    public double turnAt(int index) {
        return turn(index, LONG_FROM_MM, LONG_TO_MM);
    }

    private double turn(int index, double from, double to) {
        int a = (int) Math.round(from / step);
        int b = (int) Math.max(a + 1, Math.round(to / step));
        Point before = point(index - a).minus(point(index - b));
        Point after = point(index + b).minus(point(index + a));
        return Math.atan2(before.cross(after), before.dot(after));
    }

    private static boolean isGreatest(double[] strength, int i, int apart) {
        for (int k = 1; k <= apart; k++) {
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
