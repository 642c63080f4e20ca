package weltwright.geometry.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints.Sample;

/**
 * A natural cubic spline with given knots and ends, along measured points by least squares, robustly (Cauchy weights).
 * It is held straight with little force: what many clear points say it hardly bends, and where points count for nothing
 * it runs on smoothly from where they do.
 */
public final class SplineFit {
    /** What a turn's square counts for, next to a point's square distance. */
    private static final double STIFFNESS = 0.2;

    /** Knots to either side at which a cardinal spline is still worth counting: a quarter to the twelfth is 6e-8. */
    private static final int CARDINAL_REACH = 12;

    private static final int ROUNDS = 3;

    private final List<Sample> samples;
    private final double[] knots;

    /** What each node counts for at each sample; nothing before the node in {@link #first}. */
    private final double[][] basis;

    private final int[] first;
    private final double[] robust;

    /** Of the nodes; the first and the last stay. */
    private final double[] x;

    private final double[] y;

    private SplineFit(List<Sample> samples, double[] knots, Point start, Point end) {
        int n = knots.length;
        this.samples = samples;
        this.knots = knots;
        basis = new double[samples.size()][n];
        first = new int[samples.size()];
        robust = new double[samples.size()];
        Arrays.fill(robust, 1);
        x = new double[n];
        y = new double[n];
        x[0] = start.x();
        y[0] = start.y();
        x[n - 1] = end.x();
        y[n - 1] = end.y();
        fillBasis();
    }

    /**
     * Places the nodes of a spline so that it fits the samples best.
     *
     * @param samples along the run, with their stations on it
     * @param knots stations of the nodes, rising
     * @param toleranceMm points that keep off the curve by three times this count for half
     * @return a node for each knot
     */
    public static List<Point> nodes(List<Sample> samples, double[] knots, Point start, Point end, double toleranceMm) {
        if (knots.length == 2) {
            return List.of(start, end);
        }
        SplineFit fit = new SplineFit(samples, knots, start, end);
        for (int round = 0; round < ROUNDS; round++) {
            fit.solve();
            fit.weigh(toleranceMm);
        }
        List<Point> nodes = new ArrayList<>(knots.length);
        for (int j = 0; j < knots.length; j++) {
            nodes.add(new Point(fit.x[j], fit.y[j]));
        }
        return nodes;
    }

    private void fillBasis() {
        int n = knots.length;
        // A cardinal spline falls off to a quarter from knot to knot: beyond a few it is nothing.
        NaturalSpline[] cardinal = new NaturalSpline[n];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            cardinal[j] = new NaturalSpline(knots, unit);
        }
        for (int i = 0; i < basis.length; i++) {
            int found = Arrays.binarySearch(knots, samples.get(i).s());
            first[i] = Math.max(0, (found >= 0 ? found : -found - 2) - CARDINAL_REACH);
            for (int j = first[i]; j < end(i); j++) {
                basis[i][j] = cardinal[j].at(samples.get(i).s());
            }
        }
    }

    /** From this node on none counts at a sample. */
    private int end(int sample) {
        return Math.min(knots.length, first[sample] + 2 * CARDINAL_REACH + 2);
    }

    private void solve() {
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
        stiffen(matrix, rightX, rightY);
        SymmetricSystem system = new SymmetricSystem(matrix);
        System.arraycopy(system.solve(rightX), 0, x, 1, inner);
        System.arraycopy(system.solve(rightY), 0, y, 1, inner);
    }

    /** The turn at each node, times its span, is kept small. */
    private void stiffen(double[][] matrix, double[] rightX, double[] rightY) {
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

    private void weigh(double toleranceMm) {
        for (int i = 0; i < robust.length; i++) {
            double off = at(i).distance(samples.get(i).at()) / (3 * toleranceMm);
            robust[i] = 1 / (1 + off * off);
        }
    }

    /** The curve where a sample belongs. */
    private Point at(int sample) {
        double[] b = basis[sample];
        double px = 0;
        double py = 0;
        for (int j = first[sample]; j < end(sample); j++) {
            px += b[j] * x[j];
            py += b[j] * y[j];
        }
        return new Point(px, py);
    }
}
