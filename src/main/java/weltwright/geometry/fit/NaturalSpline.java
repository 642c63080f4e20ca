package weltwright.geometry.fit;

import java.util.Arrays;

/**
 * The natural cubic spline through values at increasing knots. It is twice continuously differentiable, has zero second
 * derivatives at both ends, and minimizes the integral of the squared second derivative.
 *
 * <p>Source: de Boor, <i>A Practical Guide to Splines</i>, chapter IV. The tridiagonal system for the second
 * derivatives is solved by the Thomas algorithm.
 *
 * <p>Hipparchus 4.0.2 has the same spline ({@code SplineInterpolator}, for three knots or more), which is as fast and
 * agrees within 3e-15 of the values. It is not used because its rounding is different: the offset curves of a pattern
 * amplify that, so that vertices of the sample patterns moved by up to 0.055 mm, and a stored job would no longer give
 * the same pattern.
 */
public final class NaturalSpline {
    private final double[] knots;
    private final double[] values;
    private final double[] seconds;

    /**
     * Interpolates values.
     *
     * @param knots strictly increasing, at least two
     * @param values one for each knot
     */
    public NaturalSpline(double[] knots, double[] values) {
        this.knots = knots;
        this.values = values;
        this.seconds = secondDerivatives(knots, values);
    }

    /** The value at {@code t}; beyond the first and the last knot the outermost cubic is extrapolated. */
    public double at(double t) {
        int found = Arrays.binarySearch(knots, t);
        int i = Math.max(0, Math.min(found >= 0 ? found : -found - 2, knots.length - 2));
        double h = knots[i + 1] - knots[i];
        double a = (knots[i + 1] - t) / h;
        double b = 1 - a;
        return a * values[i]
                + b * values[i + 1]
                + ((a * a * a - a) * seconds[i] + (b * b * b - b) * seconds[i + 1]) * h * h / 6;
    }

    private static double[] secondDerivatives(double[] t, double[] y) {
        int n = t.length;
        double[] m = new double[n];
        double[] upper = new double[n];
        for (int i = 1; i < n - 1; i++) {
            double before = t[i] - t[i - 1];
            double after = t[i + 1] - t[i];
            double slopes = 6 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
            double pivot = 2 * (before + after) - before * upper[i - 1];
            upper[i] = after / pivot;
            m[i] = (slopes - before * m[i - 1]) / pivot;
        }
        m[n - 1] = 0;
        for (int i = n - 2; i > 0; i--) {
            m[i] -= upper[i] * m[i + 1];
        }
        return m;
    }
}
