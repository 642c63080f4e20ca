package weltwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Fits an {@link Outline} of few nodes to many measured points round a shape.
 *
 * <p>Made for points that are dense (several for each mm of the smallest feature), in order, and off by noise with now
 * and then an outlier. The steps:
 *
 * <ol>
 *   <li>put a sharp node at each given corner, where the lines through the points on either side meet: points right at a
 *       corner are rounded off by any lens and are not used;
 *   <li>between two corners fit a natural cubic spline by least squares, robustly (Cauchy weights);
 *   <li>where it keeps off the points by more than the tolerance over some length, add a node there, and again.
 * </ol>
 *
 * The curve thus has nodes where the shape turns and few where it runs straight.
 */
public final class OutlineFit {
    /** How much of the curve on either side of a corner the lens rounds off. */
    private static final double ROUNDED_MM = 0.6;

    /** The lines that meet in a corner are fitted to so much of the curve beyond that. */
    private static final double CORNER_REACH_MM = 2;

    /** Rounding reaches so much farther at the most acute of corners than at a square one. */
    private static final double MOST_STRETCH = 3.5;

    /** Lines nearer to parallel than this meet anywhere. */
    private static final double LEAST_SINE = 0.15;

    /** A square corner computed farther than this from the measured one is not believed. */
    private static final double CORNER_MOST_MM = 1.5;

    /** A line through fewer points than this, as they count, points anywhere. */
    private static final double LEAST_POINTS = 3;

    private static final double LEAST_PART = 0.25;

    /** Where all points near a corner are faint they still say best where its sides run. */
    private static final double FAINT_WEIGHT = 0.01;

    /** What a turn's square counts for, next to a point's square distance. */
    private static final double STIFFNESS = 0.2;

    private static final double FIRST_SPAN_MM = 24;
    private static final double LEAST_SPAN_MM = 2.4;

    /** Knots to either side at which a cardinal spline is still worth counting: a quarter to the twelfth is 6e-8. */
    private static final int CARDINAL_REACH = 12;

    /** A deviation must last this long to be a shape and not noise. */
    private static final double WINDOW_MM = 2;

    private final List<Point> ring;
    private final double[] weight;
    private final double[] station;
    private final double toleranceMm;

    private OutlineFit(List<Point> ring, double[] weight, double toleranceMm) {
        this.ring = ring;
        this.weight = weight;
        this.station = Polyline.closed(ring).stationsMm();
        this.toleranceMm = toleranceMm;
    }

    /**
     * @param ring measured points, counter-clockwise, closed, each once
     * @param weight how much each counts; not negative
     * @param corners indices of points at true corners, rising, at least one
     * @param toleranceMm how far the curve may keep off the points' run
     */
    public static Outline fit(List<Point> ring, double[] weight, int[] corners, double toleranceMm) {
        OutlineFit fit = new OutlineFit(ring, weight, toleranceMm);
        Corner[] place = new Corner[corners.length];
        for (int c = 0; c < corners.length; c++) {
            int before = corners[(c + corners.length - 1) % corners.length];
            int after = corners[(c + 1) % corners.length];
            place[c] = fit.corner(corners[c], before, after);
        }
        // Where the corners are, the runs between them do not hang on each other.
        List<List<Point>> runs = IntStream.range(0, corners.length)
                .parallel()
                .mapToObj(c -> {
                    int next = (c + 1) % corners.length;
                    return fit.between(corners[c], corners[next], place[c], place[next]);
                })
                .toList();
        List<Node> nodes = new ArrayList<>();
        for (int c = 0; c < corners.length; c++) {
            nodes.add(new Node(place[c].at(), true));
            runs.get(c).forEach(p -> nodes.add(new Node(p, false)));
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
    public static List<Node> fitBetween(List<Point> line, int[] corners, double toleranceMm) {
        double[] weight = new double[line.size()];
        Arrays.fill(weight, 1);
        OutlineFit fit = new OutlineFit(line, weight, toleranceMm);
        int last = line.size() - 1;
        List<Node> nodes = new ArrayList<>();
        int from = 0;
        Corner start = new Corner(line.get(0), 0);
        for (int c = 0; c <= corners.length; c++) {
            int to = c < corners.length ? corners[c] : last;
            Corner end = c < corners.length
                    ? fit.corner(to, from, c + 1 < corners.length ? corners[c + 1] : last)
                    : new Corner(line.get(last), 0);
            fit.between(from, to, start, end).forEach(p -> nodes.add(new Node(p, false)));
            if (c < corners.length) {
                nodes.add(new Node(end.at(), true));
            }
            from = to;
            start = end;
        }
        return nodes;
    }

    /**
     * @param at where the corner is
     * @param roundedMm how much of the curve on either side is rounded off
     */
    private record Corner(Point at, double roundedMm) {}

    /** Where the runs of points on either side meet; they go no farther than the next corners. */
    private Corner corner(int index, int previous, int next) {
        double total = station[ring.size()];
        double roomBefore = index == previous ? total : away(index, previous, -1);
        double roomAfter = index == next ? total : away(index, next, 1);
        Corner corner = new Corner(ring.get(index), ROUNDED_MM);
        // The more acute a corner, the farther from it it is rounded; how acute it is, the first round tells.
        for (int round = 0; round < 2; round++) {
            Line before = line(index, -1, roomBefore, corner.roundedMm());
            Line after = line(index, 1, roomAfter, corner.roundedMm());
            if (before == null || after == null || Math.abs(before.away().cross(after.away())) < LEAST_SINE) {
                return corner;
            }
            double half = Math.acos(Math.max(-1, Math.min(1, before.away().dot(after.away())))) / 2;
            double stretch = Math.min(MOST_STRETCH, Math.sin(Math.PI / 4) / Math.sin(half));
            Point meeting = before.meets(after);
            if (meeting.distance(ring.get(index)) > CORNER_MOST_MM * Math.max(1, stretch)) {
                return corner;
            }
            corner = new Corner(meeting, ROUNDED_MM * Math.max(1, stretch));
        }
        return corner;
    }

    /** @param away the direction away from the corner */
    private record Line(Point through, Point away) {
        Point meets(Line other) {
            double t = other.through.minus(through).cross(other.away) / away.cross(other.away);
            return through.plus(away.times(t));
        }
    }

    /** The line of least squares through the points from a corner on, by the axis of their inertia. */
    private Line line(int index, int step, double room, double roundedMm) {
        double rounded = Math.min(roundedMm, room / 4);
        double reach = Math.min(rounded + CORNER_REACH_MM, room - rounded);
        List<Sample> used = new ArrayList<>();
        for (int k = 1; k < ring.size() / 2; k++) {
            int i = Math.floorMod(index + step * k, ring.size());
            double away = away(index, i, step);
            if (away > reach) {
                break;
            }
            if (away > rounded) {
                used.add(new Sample(away, ring.get(i), weight[i] + FAINT_WEIGHT));
            }
        }
        double weights = 0;
        double squares = 0;
        Point middle = new Point(0, 0);
        for (Sample sample : used) {
            weights += sample.weight();
            squares += sample.weight() * sample.weight();
            middle = middle.plus(sample.at().times(sample.weight()));
        }
        // Where a few points count for all of them (Kish's effective number) they make no line.
        if (used.isEmpty() || weights * weights / squares < Math.max(LEAST_POINTS, LEAST_PART * used.size())) {
            return null;
        }
        middle = middle.times(1 / weights);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (Sample sample : used) {
            Point arm = sample.at().minus(middle);
            xx += sample.weight() * arm.x() * arm.x();
            xy += sample.weight() * arm.x() * arm.y();
            yy += sample.weight() * arm.y() * arm.y();
        }
        double angle = Math.atan2(2 * xy, xx - yy) / 2;
        Point direction = new Point(Math.cos(angle), Math.sin(angle));
        boolean outward = direction.dot(middle.minus(ring.get(index))) > 0;
        return new Line(middle, outward ? direction : direction.times(-1));
    }

    private double away(int from, int to, int step) {
        double total = station[ring.size()];
        double s = (station[to] - station[from]) * step;
        return s < 0 ? s + total : s;
    }

    /** The smooth nodes between two corners. */
    private List<Point> between(int from, int to, Corner start, Corner end) {
        int n = ring.size();
        double total = from == to ? station[n] : away(from, to, 1);
        double roundedStart = Math.min(start.roundedMm(), total / 4);
        double roundedEnd = Math.min(end.roundedMm(), total / 4);
        List<Sample> samples = new ArrayList<>();
        for (int k = 1; k < n; k++) {
            int i = (from + k) % n;
            if (i == to) {
                break;
            }
            double s = away(from, i, 1);
            if (s > roundedStart && s < total - roundedEnd && weight[i] > 0) {
                samples.add(new Sample(s, ring.get(i), weight[i]));
            }
        }
        // The corner moved from the rounded point to the true one, so the ends of the arc are a little farther out.
        double[] knots = evenKnots(
                -start.at().distance(ring.get(from)), total + end.at().distance(ring.get(to)), FIRST_SPAN_MM);
        while (true) {
            List<Point> nodes = spline(samples, knots, start.at(), end.at());
            double[] more = refined(samples, knots, nodes);
            if (more.length == knots.length) {
                return nodes.subList(1, nodes.size() - 1);
            }
            knots = more;
        }
    }

    private record Sample(double s, Point at, double weight) {}

    private static double[] evenKnots(double from, double to, double span) {
        int spans = (int) Math.max(1, Math.round((to - from) / span));
        double[] knots = new double[spans + 1];
        for (int i = 0; i <= spans; i++) {
            knots[i] = from + (to - from) * i / spans;
        }
        return knots;
    }

    /** Least squares nodes at the knots, the first and last of them held. */
    private List<Point> spline(List<Sample> samples, double[] knots, Point start, Point end) {
        int n = knots.length;
        if (n == 2) {
            return List.of(start, end);
        }
        // A cardinal spline falls off to a quarter from knot to knot: beyond a few it is nothing.
        NaturalSpline[] cardinal = new NaturalSpline[n];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            cardinal[j] = new NaturalSpline(knots, unit);
        }
        double[][] basis = new double[samples.size()][n];
        double[] robust = new double[samples.size()];
        Arrays.fill(robust, 1);
        int[] first = new int[samples.size()];
        for (int i = 0; i < basis.length; i++) {
            int found = Arrays.binarySearch(knots, samples.get(i).s());
            first[i] = Math.max(0, (found >= 0 ? found : -found - 2) - CARDINAL_REACH);
            for (int j = first[i]; j < Math.min(n, first[i] + 2 * CARDINAL_REACH + 2); j++) {
                basis[i][j] = cardinal[j].at(samples.get(i).s());
            }
        }
        double[] x = new double[n];
        double[] y = new double[n];
        x[0] = start.x();
        y[0] = start.y();
        x[n - 1] = end.x();
        y[n - 1] = end.y();
        for (int round = 0; round < 3; round++) {
            solve(samples, knots, basis, first, robust, x, y);
            for (int i = 0; i < robust.length; i++) {
                double off = at(basis[i], first[i], x, y).distance(samples.get(i).at()) / (3 * toleranceMm);
                robust[i] = 1 / (1 + off * off);
            }
        }
        List<Point> nodes = new ArrayList<>(n);
        for (int j = 0; j < n; j++) {
            nodes.add(new Point(x[j], y[j]));
        }
        return nodes;
    }

    private static void solve(
            List<Sample> samples,
            double[] knots,
            double[][] basis,
            int[] first,
            double[] robust,
            double[] x,
            double[] y) {
        int inner = x.length - 2;
        double[][] matrix = new double[inner][inner];
        double[] rightX = new double[inner];
        double[] rightY = new double[inner];
        for (int i = 0; i < basis.length; i++) {
            double[] b = basis[i];
            double w = samples.get(i).weight() * robust[i];
            double dx = samples.get(i).at().x() - b[0] * x[0] - b[inner + 1] * x[inner + 1];
            double dy = samples.get(i).at().y() - b[0] * y[0] - b[inner + 1] * y[inner + 1];
            int from = Math.max(0, first[i] - 1);
            for (int j = from; j < Math.min(inner, from + 2 * CARDINAL_REACH + 2); j++) {
                rightX[j] += w * b[j + 1] * dx;
                rightY[j] += w * b[j + 1] * dy;
                for (int k = from; k <= j; k++) {
                    matrix[j][k] += w * b[j + 1] * b[k + 1];
                }
            }
        }
        stiffen(matrix, knots, rightX, x, rightY, y);
        SymmetricSystem system = new SymmetricSystem(matrix);
        System.arraycopy(system.solve(rightX), 0, x, 1, inner);
        System.arraycopy(system.solve(rightY), 0, y, 1, inner);
    }

    /**
     * Holds the curve straight with little force: what many clear points say it hardly bends, and where points count for
     * nothing it runs on smoothly from where they do. The turn at each node, times its span, is kept small.
     */
    private static void stiffen(
            double[][] matrix, double[] knots, double[] rightX, double[] x, double[] rightY, double[] y) {
        int inner = matrix.length;
        for (int j = 1; j <= inner; j++) {
            double before = knots[j] - knots[j - 1];
            double after = knots[j + 1] - knots[j];
            double span = (before + after) / 2;
            double[] turn = {span / before, -span / before - span / after, span / after};
            for (int a = 0; a < 3; a++) {
                int row = j - 2 + a;
                if (row < 0 || row >= inner) {
                    continue;
                }
                for (int b = 0; b < 3; b++) {
                    int column = j - 2 + b;
                    if (column < 0 || column >= inner) {
                        rightX[row] -= STIFFNESS * turn[a] * turn[b] * x[column + 1];
                        rightY[row] -= STIFFNESS * turn[a] * turn[b] * y[column + 1];
                    } else if (column <= row) {
                        matrix[row][column] += STIFFNESS * turn[a] * turn[b];
                    }
                }
            }
        }
    }

    private static Point at(double[] basis, int first, double[] x, double[] y) {
        double px = 0;
        double py = 0;
        for (int j = first; j < Math.min(basis.length, first + 2 * CARDINAL_REACH + 2); j++) {
            px += basis[j] * x[j];
            py += basis[j] * y[j];
        }
        return new Point(px, py);
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
