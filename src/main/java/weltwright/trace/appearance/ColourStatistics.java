package weltwright.trace.appearance;

import weltwright.geometry.fit.SymmetricSystem;

/**
 * First and second moments of the colours of one material, in grey levels.
 *
 * @param sums the count; the sums of blue, green, red; the sums of the products b², bg, br, g², gr, r²
 */
public record ColourStatistics(double[] sums) {
    /** Length of {@code sums}. */
    public static final int SIZE = 10;

    /** Index in {@code sums} of the product of two channels. */
    private static final int[][] PRODUCT = {{4, 5, 6}, {5, 7, 8}, {6, 8, 9}};

    /**
     * Least variance of a smoothed pixel's brightness, in grey levels squared: a standard deviation of 2; chosen by
     * eye.
     */
    public static final double NOISE = 4;

    /**
     * Variance of the noise of hue, as a part of that of brightness: cameras remove it, and the compression averages
     * it. So a faint difference of hue, as between steel and white paper, tells more than one of brightness. Chosen by
     * eye.
     */
    private static final double HUE_NOISE = 0.25;

    /**
     * Adds a colour.
     *
     * @param at index in {@code sums} of the count
     * @param from index in {@code colour} of blue
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

    public double count() {
        return sums[0];
    }

    public double[] mean() {
        return new double[] {sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]};
    }

    private double covariance(int i, int j) {
        double n = sums[0];
        return sums[PRODUCT[i][j]] / n - sums[1 + i] / n * sums[1 + j] / n;
    }

    /** Returns the covariance of the noise of two channels, where that of brightness has a variance. */
    private static double noise(int i, int j, double brightness) {
        return (1 - HUE_NOISE) * brightness / 3 + (i == j ? HUE_NOISE * brightness : 0);
    }

    /**
     * Returns the determinant of the covariance of the colours.
     *
     * @param noise variance added to the brightness, in grey levels squared
     */
    public double determinant(double noise) {
        double[][] m = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                m[i][j] = covariance(i, j) + noise(i, j, noise);
            }
        }
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }

    /**
     * Fisher's linear discriminant (1936): the mixture of channels that separates two materials best. It divides the
     * difference of the means by the scatter within each, so that wood grain, the slope of a shadow or a printed line
     * on either side count little.
     *
     * @param weights of blue, green and red; the means of the mixtures differ by {@code square}
     * @param square squared difference of the means, in variances of the mixture within the materials
     */
    public record Discriminant(double[] weights, double square) {
        /** Returns how far the mean of some colours lies on the way from the first material, 0, to the other, 1. */
        public double part(ColourStatistics first, ColourStatistics colours) {
            double[] from = first.mean();
            double[] to = colours.mean();
            double way = 0;
            for (int i = 0; i < 3; i++) {
                way += weights[i] * (to[i] - from[i]);
            }
            return way / square;
        }
    }

    /** Returns the discriminant from this material to another one; the other's mixture is the greater. */
    public Discriminant against(ColourStatistics other) {
        double[][] within = new double[3][3];
        double[] step = new double[3];
        for (int i = 0; i < 3; i++) {
            step[i] = other.sums[1 + i] / other.sums[0] - sums[1 + i] / sums[0];
            for (int j = 0; j <= i; j++) {
                within[i][j] = (covariance(j, i) + other.covariance(j, i)) / 2 + noise(i, j, NOISE);
                within[j][i] = within[i][j];
            }
        }
        double[] weights = new SymmetricSystem(within).solve(step);
        return new Discriminant(weights, weights[0] * step[0] + weights[1] * step[1] + weights[2] * step[2]);
    }
}
