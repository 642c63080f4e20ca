package weltwright.trace.appearance;

import weltwright.geometry.fit.SymmetricSystem;

/**
 * Sums over colours of one kind, from which their mean and how they scatter follow.
 *
 * @param sums how many; blue, green, red; and the products of two channels each
 */
public record ColourStatistics(double[] sums) {
    /** Length of the sums. */
    public static final int SIZE = 10;

    /** Where the sum of the products of two channels stands. */
    private static final int[][] PRODUCT = {{4, 5, 6}, {5, 7, 8}, {6, 8, 9}};

    /** Variance of a smoothed pixel's noise, in grey levels squared, that is always there. */
    public static final double NOISE = 4;

    /**
     * Adds a colour.
     *
     * @param at where in {@code sums} they begin
     * @param from where in {@code colour} its blue stands
     */
    public static void add(double[] sums, int at, float[] colour, int from) {
        double b = colour[from];
        double g = colour[from + 1];
        double r = colour[from + 2];
        sums[at]++;
        sums[at + 1] += b;
        sums[at + 2] += g;
        sums[at + 3] += r;
        sums[at + 4] += b * b;
        sums[at + 5] += b * g;
        sums[at + 6] += b * r;
        sums[at + 7] += g * g;
        sums[at + 8] += g * r;
        sums[at + 9] += r * r;
    }

    public double[] mean() {
        return new double[] {sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]};
    }

    private double covariance(int i, int j) {
        double n = sums[0];
        return sums[PRODUCT[i][j]] / n - sums[1 + i] / n * sums[1 + j] / n;
    }

    /**
     * Which mixture of the channels tells two kinds of colour best apart: Fisher's linear discriminant (1936). It
     * weighs the difference of the means against how much each kind scatters in itself, so wood grain, a shadow's
     * falling off or a printed line on either side count for little.
     *
     * @param weights of blue, green and red; the mixture of the other kind less that of this one is {@code square}
     * @param square how far the two are apart, in standard deviations of the mixture within them, squared
     */
    public record Discriminant(double[] weights, double square) {}

    public Discriminant against(ColourStatistics other) {
        double[][] within = new double[3][3];
        double[] step = new double[3];
        for (int i = 0; i < 3; i++) {
            step[i] = other.sums[1 + i] / other.sums[0] - sums[1 + i] / sums[0];
            for (int j = 0; j <= i; j++) {
                within[i][j] = (covariance(j, i) + other.covariance(j, i)) / 2 + (i == j ? NOISE : 0);
                within[j][i] = within[i][j];
            }
        }
        double[] weights = new SymmetricSystem(within).solve(step);
        return new Discriminant(weights, weights[0] * step[0] + weights[1] * step[1] + weights[2] * step[2]);
    }
}
