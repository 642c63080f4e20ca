package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints;
import weltwright.geometry.fit.CyclicPoints.Sample;
import weltwright.geometry.fit.SplineFit;

/**
 * Fits an {@link Outline} of few nodes to many measured points round a shape.
 *
 * <ol>
 *   <li>Put a sharp node at each given corner ({@link SharpCorner}). Points right at a corner are rounded off by the
 *       lens and are not used.
 *   <li>Between two corners fit a natural cubic spline by robust least squares ({@link SplineFit}).
 *   <li>Halve each span in which the mean deviation over 2 mm exceeds the tolerance, and fit again.
 * </ol>
 *
 * The nodes are thus dense where the shape curves and sparse where it is straight.
 *
 * <p>Assumes points in order, several for each mm of the smallest feature, with noise and few outliers. Constants are
 * chosen by eye.
 */
public final class OutlineFit {
    /** Distance of the knots in the first fit. */
    private static final double FIRST_SPAN_MM = 24;

    /** Least distance of two knots. */
    private static final double LEAST_SPAN_MM = 2.4;

    /** Arc length over which deviations are averaged. */
    private static final double WINDOW_MM = 2;

    /** Deviations are clipped to so many tolerances, so that an outlier does not add a node. */
    private static final double CLIPPED_AT = 4;

    /** Step at which the fitted curve is sampled to measure deviations. */
    private static final double STEP_MM = 0.25;

    /** Number of samples of the curve ahead of the last nearest one in which the next is searched: 10 mm. */
    private static final int SEARCH_AHEAD = 40;

    private final CyclicPoints run;
    private final double toleranceMm;

    private OutlineFit(CyclicPoints run, double toleranceMm) {
        this.run = run;
        this.toleranceMm = toleranceMm;
    }

    /**
     * Fits a closed outline to a ring of measured points.
     *
     * @param ring measured points, counter-clockwise, the first not repeated
     * @param weight of each point; not negative
     * @param corners indices of points at corners, in ascending order, at least one
     * @param toleranceMm greatest mean deviation of points of weight 1 from the curve over 2 mm
     */
    public static Outline fit(List<Point> ring, double[] weight, int[] corners, double toleranceMm) {
        OutlineFit fit = new OutlineFit(CyclicPoints.of(ring, weight), toleranceMm);
        SharpCorner[] place = new SharpCorner[corners.length];
        for (int c = 0; c < corners.length; c++) {
            int before = corners[(c + corners.length - 1) % corners.length];
            int after = corners[(c + 1) % corners.length];
            place[c] = SharpCorner.of(fit.run, corners[c], before, after);
        }
        // Given the corners, the curves between them are independent.
        List<List<Point>> runs = IntStream.range(0, corners.length)
                .parallel()
                .mapToObj(c -> {
                    int next = (c + 1) % corners.length;
                    return fit.between(corners[c], corners[next], place[c], place[next]);
                })
                .toList();
        List<OutlineNode> nodes = new ArrayList<>();
        for (int c = 0; c < corners.length; c++) {
            nodes.add(new OutlineNode(place[c].at(), true));
            runs.get(c).forEach(p -> nodes.add(new OutlineNode(p, false)));
        }
        return new Outline(nodes);
    }

    /**
     * Fits a curve to an open sequence of points that begins and ends at the first and the last of them.
     *
     * @param line measured points in order, all of weight 1
     * @param corners indices of points at corners, in ascending order, neither the first nor the last point; possibly
     *     none
     * @param toleranceMm as in {@link #fit}
     * @return the nodes of the curve without its two end points
     */
    public static List<OutlineNode> fitBetween(List<Point> line, int[] corners, double toleranceMm) {
        double[] weight = new double[line.size()];
        Arrays.fill(weight, 1);
        OutlineFit fit = new OutlineFit(CyclicPoints.of(line, weight), toleranceMm);
        int last = line.size() - 1;
        List<OutlineNode> nodes = new ArrayList<>();
        int from = 0;
        SharpCorner start = new SharpCorner(line.get(0), 0);
        for (int c = 0; c <= corners.length; c++) {
            int to = c < corners.length ? corners[c] : last;
            SharpCorner end = c < corners.length
                    ? SharpCorner.of(fit.run, to, from, c + 1 < corners.length ? corners[c + 1] : last)
                    : new SharpCorner(line.get(last), 0);
            fit.between(from, to, start, end).forEach(p -> nodes.add(new OutlineNode(p, false)));
            if (c < corners.length) {
                nodes.add(new OutlineNode(end.at(), true));
            }
            from = to;
            start = end;
        }
        return nodes;
    }

    /** The smooth nodes between two corners, given by the index of the measured point and the reconstruction. */
    private List<Point> between(int from, int to, SharpCorner start, SharpCorner end) {
        int n = run.size();
        double total = from == to ? run.lengthMm() : run.distanceAlong(from, to, 1);
        double roundedStart = Math.min(start.roundedMm(), total / 4);
        double roundedEnd = Math.min(end.roundedMm(), total / 4);
        List<Sample> samples = new ArrayList<>();
        for (int k = 1; k < n; k++) {
            int i = (from + k) % n;
            if (i == to) {
                break;
            }
            double s = run.distanceAlong(from, i, 1);
            if (s > roundedStart && s < total - roundedEnd && run.weight()[i] > 0) {
                samples.add(new Sample(s, run.points().get(i), run.weight()[i]));
            }
        }
        // The reconstructed corners lie outside the measured ones, which have the arc lengths 0 and total.
        double[] knots = evenKnots(
                -start.at().distance(run.points().get(from)),
                total + end.at().distance(run.points().get(to)),
                FIRST_SPAN_MM);
        while (true) {
            List<Point> nodes = SplineFit.nodes(samples, knots, start.at(), end.at(), toleranceMm);
            double[] more = refined(samples, knots, nodes);
            if (more.length == knots.length) {
                return nodes.subList(1, nodes.size() - 1);
            }
            knots = more;
        }
    }

    private static double[] evenKnots(double from, double to, double span) {
        int spans = (int) Math.max(1, Math.round((to - from) / span));
        double[] knots = new double[spans + 1];
        for (int i = 0; i <= spans; i++) {
            knots[i] = from + (to - from) * i / spans;
        }
        return knots;
    }

    /** The knots, with one more in the middle of each span in which the points deviate from the curve. */
    private double[] refined(List<Sample> samples, double[] knots, List<Point> nodes) {
        // The outline's parameter is the chord length between nodes, not the knots of the fit.
        Outline.Stretch curve = new Outline.Stretch(nodes);
        List<Point> drawn = new ArrayList<>();
        for (int j = 0; j + 1 < nodes.size(); j++) {
            int steps = (int) Math.max(1, Math.ceil((curve.knot(j + 1) - curve.knot(j)) / STEP_MM));
            for (int k = 0; k < steps; k++) {
                drawn.add(curve.at(curve.knot(j) + (curve.knot(j + 1) - curve.knot(j)) * k / steps));
            }
        }
        drawn.add(nodes.get(nodes.size() - 1));
        double[] deviation = deviations(samples, drawn);
        List<Double> more = new ArrayList<>(List.of(knots[0]));
        for (int j = 0; j + 1 < knots.length; j++) {
            double span = knots[j + 1] - knots[j];
            if (span >= 2 * LEAST_SPAN_MM && deviates(samples, deviation, knots[j], knots[j + 1])) {
                more.add(knots[j] + span / 2);
            }
            more.add(knots[j + 1]);
        }
        return more.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The signed distances of the samples from the sampled curve, positive to its left. */
    private static double[] deviations(List<Sample> samples, List<Point> drawn) {
        double[] deviation = new double[samples.size()];
        int at = 0;
        for (int i = 0; i < deviation.length; i++) {
            Point p = samples.get(i).at();
            int best = at;
            for (int k = at; k < Math.min(at + SEARCH_AHEAD, drawn.size()); k++) {
                best = drawn.get(k).distance(p) < drawn.get(best).distance(p) ? k : best;
            }
            at = best;
            int a = Math.max(0, Math.min(best, drawn.size() - 2));
            Point before = drawn.get(Math.max(0, a - 1));
            Point direction = drawn.get(a + 1).minus(before).unit();
            deviation[i] = direction.cross(p.minus(drawn.get(best)));
        }
        return deviation;
    }

    /** Whether the weighted mean deviation over a window exceeds the tolerance with its middle between two knots. */
    private boolean deviates(List<Sample> samples, double[] deviation, double from, double to) {
        int first = 0;
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < deviation.length; i++) {
            double s = samples.get(i).s();
            sum += samples.get(i).weight() * clipped(deviation[i]);
            weights += samples.get(i).weight();
            while (samples.get(first).s() < s - WINDOW_MM) {
                sum -= samples.get(first).weight() * clipped(deviation[first]);
                weights -= samples.get(first).weight();
                first++;
            }
            double middle = s - WINDOW_MM / 2;
            // The standard deviation of a point is taken as the inverse square root of its weight.
            double tolerance = toleranceMm / Math.sqrt(weights / (i - first + 1));
            if (middle > from && middle < to && i - first >= 3 && Math.abs(sum / weights) > tolerance) {
                return true;
            }
        }
        return false;
    }

    private double clipped(double deviation) {
        double limit = CLIPPED_AT * toleranceMm;
        return Math.max(-limit, Math.min(limit, deviation));
    }
}
