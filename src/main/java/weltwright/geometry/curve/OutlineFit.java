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
 * <p>Made for points that are dense (several for each mm of the smallest feature), in order, and off by noise with now
 * and then an outlier. The steps:
 *
 * <ol>
 *   <li>put a sharp node at each given corner ({@link SharpCorner}): points right at a corner are rounded off by any
 *       lens and are not used;
 *   <li>between two corners fit a natural cubic spline by least squares ({@link SplineFit});
 *   <li>where it keeps off the points by more than the tolerance over some length, add a node there, and again.
 * </ol>
 *
 * The curve thus has nodes where the shape turns and few where it runs straight.
 */
public final class OutlineFit {
    private static final double FIRST_SPAN_MM = 24;
    private static final double LEAST_SPAN_MM = 2.4;

    /** A deviation must last this long to be a shape and not noise. */
    private static final double WINDOW_MM = 2;

    private final CyclicPoints run;
    private final double toleranceMm;

    private OutlineFit(CyclicPoints run, double toleranceMm) {
        this.run = run;
        this.toleranceMm = toleranceMm;
    }

    /**
     * Fits a closed outline of curves to a ring of measured points.
     *
     * @param ring measured points, counter-clockwise, closed, each once
     * @param weight how much each counts; not negative
     * @param corners indices of points at true corners, rising, at least one
     * @param toleranceMm how far the curve may keep off the points' run
     */
    public static Outline fit(List<Point> ring, double[] weight, int[] corners, double toleranceMm) {
        OutlineFit fit = new OutlineFit(CyclicPoints.of(ring, weight), toleranceMm);
        SharpCorner[] place = new SharpCorner[corners.length];
        for (int c = 0; c < corners.length; c++) {
            int before = corners[(c + corners.length - 1) % corners.length];
            int after = corners[(c + 1) % corners.length];
            place[c] = SharpCorner.of(fit.run, corners[c], before, after);
        }
        // Where the corners are, the runs between them do not hang on each other.
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
     * The nodes of a curve along an open run of points, without its first and last point, which hold its ends.
     *
     * @param line measured points in order, each once, all counting alike
     * @param corners indices of points at true corners, rising, none of them first or last; possibly none
     * @param toleranceMm how far the curve may keep off the points' run
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

    /** The smooth nodes between two corners. */
    private List<Point> between(int from, int to, SharpCorner start, SharpCorner end) {
        int n = run.size();
        double total = from == to ? run.lengthMm() : run.away(from, to, 1);
        double roundedStart = Math.min(start.roundedMm(), total / 4);
        double roundedEnd = Math.min(end.roundedMm(), total / 4);
        List<Sample> samples = new ArrayList<>();
        for (int k = 1; k < n; k++) {
            int i = (from + k) % n;
            if (i == to) {
                break;
            }
            double s = run.away(from, i, 1);
            if (s > roundedStart && s < total - roundedEnd && run.weight()[i] > 0) {
                samples.add(new Sample(s, run.points().get(i), run.weight()[i]));
            }
        }
        // The corner moved from the rounded point to the true one, so the ends of the arc are a little farther out.
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

    /** The knots, with one more in the middle of each span from which the points keep off. */
    private double[] refined(List<Sample> samples, double[] knots, List<Point> nodes) {
        // Measured against the curve as the outline will draw it, over the chords between its nodes.
        Outline.Stretch curve = new Outline.Stretch(nodes);
        List<Point> drawn = new ArrayList<>();
        double step = 0.25;
        for (int j = 0; j + 1 < nodes.size(); j++) {
            int steps = (int) Math.max(1, Math.ceil((curve.knot(j + 1) - curve.knot(j)) / step));
            for (int k = 0; k < steps; k++) {
                drawn.add(curve.at(curve.knot(j) + (curve.knot(j + 1) - curve.knot(j)) * k / steps));
            }
        }
        drawn.add(nodes.get(nodes.size() - 1));
        double[] off = offsets(samples, drawn);
        List<Double> more = new ArrayList<>(List.of(knots[0]));
        for (int j = 0; j + 1 < knots.length; j++) {
            double span = knots[j + 1] - knots[j];
            if (span >= 2 * LEAST_SPAN_MM && keepsOff(samples, off, knots[j], knots[j + 1])) {
                more.add(knots[j] + span / 2);
            }
            more.add(knots[j + 1]);
        }
        return more.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Signed distances of the samples from the drawn curve, positive to its left; the search walks along with them. */
    private static double[] offsets(List<Sample> samples, List<Point> drawn) {
        double[] off = new double[samples.size()];
        int at = 0;
        for (int i = 0; i < off.length; i++) {
            Point p = samples.get(i).at();
            int best = at;
            for (int k = at; k < Math.min(at + 40, drawn.size()); k++) {
                best = drawn.get(k).distance(p) < drawn.get(best).distance(p) ? k : best;
            }
            at = best;
            int a = Math.max(0, Math.min(best, drawn.size() - 2));
            Point before = drawn.get(Math.max(0, a - 1));
            Point direction = drawn.get(a + 1).minus(before).unit();
            off[i] = direction.cross(p.minus(drawn.get(best)));
        }
        return off;
    }

    private boolean keepsOff(List<Sample> samples, double[] off, double from, double to) {
        int first = 0;
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < off.length; i++) {
            double s = samples.get(i).s();
            // An outlier must not buy a node.
            double kept = Math.max(-4 * toleranceMm, Math.min(4 * toleranceMm, off[i]));
            sum += samples.get(i).weight() * kept;
            weights += samples.get(i).weight();
            while (samples.get(first).s() < s - WINDOW_MM) {
                sum -= samples.get(first).weight() * Math.max(-4 * toleranceMm, Math.min(4 * toleranceMm, off[first]));
                weights -= samples.get(first).weight();
                first++;
            }
            double middle = s - WINDOW_MM / 2;
            // The mean of points that count for little is no sharper than they are.
            double tolerance = toleranceMm / Math.sqrt(weights / (i - first + 1));
            if (middle > from && middle < to && i - first >= 3 && Math.abs(sum / weights) > tolerance) {
                return true;
            }
        }
        return false;
    }
}
