package weltwright.geometry.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints.Sample;

/**
 * Fits a natural cubic spline with given knots and fixed end points to weighted points by robust least squares.
 *
 * <ol>
 *   <li>Solve the normal equations for the inner nodes, with a penalty on the second difference of the nodes. The
 *       penalty is small beside well measured points; where the weights are 0 it continues the curve smoothly from both
 *       sides.
 *   <li>Multiply the weights by Cauchy weights of the residuals, and solve again; three rounds in all.
 * </ol>
 *
 * <p>Assumes a few dozen knots at most: the matrix is dense. Hipparchus has no fit of a curve in the plane with fixed
 * ends and a penalty.
 */
public final class SplineFit {
    /** Weight of a node's squared second difference against a point's squared distance. Chosen by eye. */
    private static final double STIFFNESS = 0.2;

    /**
     * Number of knots to either side over which a cardinal spline is evaluated. It decays by a factor of about 4 from
     * knot to knot, so what is cut off is less than 4^-12 = 6e-8.
     */
    private static final int CARDINAL_REACH = 12;

    /** Rounds of reweighting. Chosen by eye. */
    private static final int ROUNDS = 3;

    private final List<Sample> samples;
    private final double[] knots;

    /** Coefficient of each node at each sample; 0 before the node {@link #firstNode} and from {@link #endNode} on. */
    private final double[][] basis;

    private final int[] firstNode;
    private final double[] robustWeight;

    /** Coordinates of the nodes; those of the first and the last are fixed. */
    private final double[] x;

    private final double[] y;

    private SplineFit(List<Sample> samples, double[] knots, Point start, Point end) {
        int n = knots.length;
        this.samples = samples;
        this.knots = knots;
        basis = new double[samples.size()][n];
        firstNode = new int[samples.size()];
        robustWeight = new double[samples.size()];
        Arrays.fill(robustWeight, 1);
        x = new double[n];
        y = new double[n];
        x[0] = start.x();
        y[0] = start.y();
        x[n - 1] = end.x();
        y[n - 1] = end.y();
        fillBasis();
    }

    /**
     * Computes the nodes of the spline that fits the samples best.
     *
     * @param samples weighted points with their arc lengths, each between the first and the last knot
     * @param knots arc lengths of the nodes, strictly increasing, in mm
     * @param start the node at the first knot
     * @param end the node at the last knot
     * @param toleranceMm a third of the residual at which a point's weight is halved
     * @return a node for each knot
     */
    public static List<Point> nodes(List<Sample> samples, double[] knots, Point start, Point end, double toleranceMm) {
        if (knots.length == 2) {
            return List.of(start, end);
        }
        SplineFit fit = new SplineFit(samples, knots, start, end);
        for (int round = 0; round < ROUNDS; round++) {
            fit.solve();
            fit.reweight(toleranceMm);
        }
        List<Point> nodes = new ArrayList<>(knots.length);
        for (int j = 0; j < knots.length; j++) {
            nodes.add(new Point(fit.x[j], fit.y[j]));
        }
        return nodes;
    }

    private void fillBasis() {
        int n = knots.length;
        NaturalSpline[] cardinal = new NaturalSpline[n];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            cardinal[j] = new NaturalSpline(knots, unit);
        }
        for (int i = 0; i < basis.length; i++) {
            int found = Arrays.binarySearch(knots, samples.get(i).s());
            firstNode[i] = Math.max(0, (found >= 0 ? found : -found - 2) - CARDINAL_REACH);
            for (int j = firstNode[i]; j < endNode(i); j++) {
                basis[i][j] = cardinal[j].at(samples.get(i).s());
            }
        }
    }

    private int endNode(int sample) {
        return Math.min(knots.length, firstNode[sample] + 2 * CARDINAL_REACH + 2);
    }

    private void solve() {
        int inner = x.length - 2;
        double[][] matrix = new double[inner][inner];
        double[] rightX = new double[inner];
        double[] rightY = new double[inner];
        for (int i = 0; i < basis.length; i++) {
            double[] b = basis[i];
            double w = samples.get(i).weight() * robustWeight[i];
            double dx = samples.get(i).at().x() - b[0] * x[0] - b[inner + 1] * x[inner + 1];
            double dy = samples.get(i).at().y() - b[0] * y[0] - b[inner + 1] * y[inner + 1];
            int from = Math.max(0, firstNode[i] - 1);
            for (int j = from; j < Math.min(inner, from + 2 * CARDINAL_REACH + 2); j++) {
                rightX[j] += w * b[j + 1] * dx;
                rightY[j] += w * b[j + 1] * dy;
                for (int k = from; k <= j; k++) {
                    matrix[j][k] += w * b[j + 1] * b[k + 1];
                }
            }
        }
        addStiffness(matrix, rightX, rightY);
        SymmetricSystem system = new SymmetricSystem(matrix);
        System.arraycopy(system.solve(rightX), 0, x, 1, inner);
        System.arraycopy(system.solve(rightY), 0, y, 1, inner);
    }

    /** Adds the penalty on each inner node's second difference, the change of slope there times its mean span. */
    private void addStiffness(double[][] matrix, double[] rightX, double[] rightY) {
        int inner = matrix.length;
        for (int j = 1; j <= inner; j++) {
            double before = knots[j] - knots[j - 1];
            double after = knots[j + 1] - knots[j];
            double span = (before + after) / 2;
            double[] difference = {span / before, -span / before - span / after, span / after};
            for (int a = 0; a < 3; a++) {
                int row = j - 2 + a;
                if (row < 0 || row >= inner) {
                    continue;
                }
                for (int b = 0; b < 3; b++) {
                    int column = j - 2 + b;
                    if (column < 0 || column >= inner) {
                        rightX[row] -= STIFFNESS * difference[a] * difference[b] * x[column + 1];
                        rightY[row] -= STIFFNESS * difference[a] * difference[b] * y[column + 1];
                    } else if (column <= row) {
                        matrix[row][column] += STIFFNESS * difference[a] * difference[b];
                    }
                }
            }
        }
    }

    /** Cauchy weights with a scale of three tolerances. */
    private void reweight(double toleranceMm) {
        for (int i = 0; i < robustWeight.length; i++) {
            double residual = at(i).distance(samples.get(i).at()) / (3 * toleranceMm);
            robustWeight[i] = 1 / (1 + residual * residual);
        }
    }

    /** The point of the curve at a sample's arc length. */
    private Point at(int sample) {
        double[] b = basis[sample];
        double px = 0;
        double py = 0;
        for (int j = firstNode[sample]; j < endNode(sample); j++) {
            px += b[j] * x[j];
            py += b[j] * y[j];
        }
        return new Point(px, py);
    }
}
