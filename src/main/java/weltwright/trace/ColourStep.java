package weltwright.trace;

import weltwright.geometry.SymmetricSystem;

/**
 * Which mixture of the colour channels tells best the inside of a band from its outside: Fisher's linear discriminant
 * (1936). It weighs the difference of the two sides' mean colours against how much each side varies in itself, so wood
 * grain, a shadow's falling off or a printed line on either side count for little, and what is left is the edge.
 *
 * <p>Assumes that the near quarter of the band lies on one side of the edge and the far quarter on the other.
 */
final class ColourStep {
    /** Sums kept for each row and side: 1, three means, six products. */
    private static final int SUMS = 10;

    /** Where the sum of the products of two channels stands. */
    private static final int[][] PRODUCT = {{4, 5, 6}, {5, 7, 8}, {6, 8, 9}};

    /** Variance of a smoothed pixel's noise, in grey levels squared, that is always there. */
    static final double NOISE = 4;

    /** Beside a thing, light from all round leaves paper at least so bright; what is darker than the second is no shade. */
    private static final double SOFT_SHADE = 0.6;

    private static final double DARK = 0.45;

    /** Skylight tints a shade by up to the first part; what is tinted by more than the second is of another colour. */
    private static final double SHADE_TINT = 0.08;

    private static final double HUE = 0.16;

    private final double[][] cumulative;
    private final int rows;

    /**
     * @param colour of the band, row by row: blue, green, red
     * @param rows of the band; the last is followed by the first
     */
    ColourStep(float[] colour, int rows, int width) {
        this.rows = rows;
        int side = Math.max(2, width / 4);
        cumulative = new double[2][(rows + 1) * SUMS];
        for (int i = 0; i < rows; i++) {
            for (int s = 0; s < 2; s++) {
                double[] into = cumulative[s];
                System.arraycopy(into, i * SUMS, into, (i + 1) * SUMS, SUMS);
                int first = s == 0 ? 0 : width - side;
                for (int k = first; k < first + side; k++) {
                    add(into, (i + 1) * SUMS, colour, 3 * (i * width + k));
                }
            }
        }
    }

    private static void add(double[] into, int at, float[] colour, int from) {
        double b = colour[from];
        double g = colour[from + 1];
        double r = colour[from + 2];
        into[at]++;
        into[at + 1] += b;
        into[at + 2] += g;
        into[at + 3] += r;
        into[at + 4] += b * b;
        into[at + 5] += b * g;
        into[at + 6] += b * r;
        into[at + 7] += g * g;
        into[at + 8] += g * r;
        into[at + 9] += r * r;
    }

    /**
     * @param weights of blue, green and red: weighted so, the colours on each side vary by 1 and the step from near to far
     *     is positive
     * @param apart that step: how far the sides are apart, in standard deviations within them
     * @param near mean colour of the near side
     * @param far mean colour of the far side
     */
    record Mix(double[] weights, double apart, double[] near, double[] far) {
        /**
         * From 0, where the near side might be the far one in shade or in a better light, to 1 where it is darker than a
         * soft shade or of another hue.
         */
        double otherThanShade() {
            double most = 0;
            double least = Double.POSITIVE_INFINITY;
            double mean = 0;
            for (int k = 0; k < 3; k++) {
                double ratio = near[k] / Math.max(1, far[k]);
                most = Math.max(most, ratio);
                least = Math.min(least, ratio);
                mean += ratio / 3;
            }
            double darker = (SOFT_SHADE - mean) / (SOFT_SHADE - DARK);
            double hue = ((most - least) / mean - SHADE_TINT) / (HUE - SHADE_TINT);
            return Math.max(0, Math.min(1, Math.max(darker, hue)));
        }
    }

    /**
     * The mixture for a row, judged over {@code 2 reach + 1} rows round it or to one side of it, whichever tells the sides
     * apart best: next to where one material ends, the rows of the other would only confuse.
     */
    Mix mix(int row, int reach) {
        double[] best = null;
        double[] bestNear = null;
        double[] bestFar = null;
        double clearest = -1;
        for (int middle : new int[] {row, row - reach, row + reach}) {
            double[] near = sums(cumulative[0], middle, reach);
            double[] far = sums(cumulative[1], middle, reach);
            double[] step = new double[3];
            for (int i = 0; i < 3; i++) {
                step[i] = far[1 + i] / far[0] - near[1 + i] / near[0];
            }
            double[] weights = new SymmetricSystem(within(near, far)).solve(step);
            double clear = weights[0] * step[0] + weights[1] * step[1] + weights[2] * step[2];
            if (clear > clearest) {
                clearest = clear;
                best = weights;
                bestNear = means(near);
                bestFar = means(far);
            }
        }
        double apart = Math.sqrt(Math.max(1e-12, clearest));
        return new Mix(new double[] {best[0] / apart, best[1] / apart, best[2] / apart}, apart, bestNear, bestFar);
    }

    private static double[] means(double[] sums) {
        return new double[] {sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]};
    }

    private static double[][] within(double[] near, double[] far) {
        double[][] within = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j <= i; j++) {
                within[i][j] = (covariance(near, j, i) + covariance(far, j, i)) / 2 + (i == j ? NOISE : 0);
                within[j][i] = within[i][j];
            }
        }
        return within;
    }

    private static double covariance(double[] sums, int i, int j) {
        double n = sums[0];
        return sums[PRODUCT[i][j]] / n - sums[1 + i] / n * sums[1 + j] / n;
    }

    private double[] sums(double[] cumulative, int row, int reach) {
        double[] sums = new double[SUMS];
        int from = Math.floorMod(row, rows) - reach;
        int to = from + 2 * reach + 1;
        if (to - from >= rows) {
            addRange(sums, cumulative, 0, rows);
        } else if (from < 0) {
            addRange(sums, cumulative, from + rows, rows);
            addRange(sums, cumulative, 0, to);
        } else if (to > rows) {
            addRange(sums, cumulative, from, rows);
            addRange(sums, cumulative, 0, to - rows);
        } else {
            addRange(sums, cumulative, from, to);
        }
        return sums;
    }

    private static void addRange(double[] sums, double[] cumulative, int from, int to) {
        for (int k = 0; k < SUMS; k++) {
            sums[k] += cumulative[to * SUMS + k] - cumulative[from * SUMS + k];
        }
    }
}
