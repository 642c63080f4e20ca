package weltwright.geometry.fit;

/**
 * Fits a straight line y = a + b x to points by least squares of the residuals in y. All points have weight 1.
 *
 * <p>Source: the normal equations of simple linear regression; {@code LineFitTest} compares the result with NIST's
 * certified values.
 */
public final class LineFit {
    private double n;
    private double sx;
    private double sy;
    private double sxx;
    private double sxy;

    /** Adds a point. */
    public void add(double x, double y) {
        n++;
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
    }

    /** The slope b. NaN or infinite unless points at two different x were added. */
    public double slope() {
        return (n * sxy - sx * sy) / (n * sxx - sx * sx);
    }

    /** The y of the line at {@code x}. NaN or infinite unless points at two different x were added. */
    public double at(double x) {
        double slope = slope();
        return (sy - slope * sx) / n + slope * x;
    }
}
