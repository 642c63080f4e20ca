package weltwright.geometry.fit;

/** The straight line y = height + slope x that fits points best by least squares of y. */
public final class LineFit {
    private double n;
    private double sx;
    private double sy;
    private double sxx;
    private double sxy;

    /** One more point, which counts as much as any other. */
    public void add(double x, double y) {
        n++;
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
    }

    /** Needs points at two different x at least. */
    public double slope() {
        return (n * sxy - sx * sy) / (n * sxx - sx * sx);
    }

    /** The height of the line at a place. Needs points at two different x at least. */
    public double at(double x) {
        double slope = slope();
        return (sy - slope * sx) / n + slope * x;
    }
}
