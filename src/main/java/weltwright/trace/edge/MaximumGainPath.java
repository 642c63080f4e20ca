package weltwright.trace.edge;

import java.util.Arrays;

/**
 * The path through all rows of a raster, one place on each, that gains the most, less what its moves to the side cost.
 * Over rows where all places gain alike it goes as straight as it can from what it follows before to what it follows
 * behind.
 *
 * <p>Found by dynamic programming (Bellman 1957): the best way to a place goes on from the best way to one of the row
 * before.
 */
final class MaximumGainPath {
    /** How many places the path may move across from one row to the next. */
    private static final int MOST_JUMP = 5;

    /** What a move by one place costs, in units of gain; by two, four times that, and so on. */
    private static final double JUMP_COST = 0.04;

    private MaximumGainPath() {}

    /**
     * The path that ends on the place where it began, the last row followed by the first. It begins at the greatest
     * gain of the row where that stands out most: to try all places of a row would take as many times as long.
     *
     * @param gain of each place, row by row
     * @param width places on a row
     * @return the place on each row
     */
    static int[] closed(float[] gain, int width) {
        int rows = gain.length / width;
        int start = clearest(gain, width);
        int startAt = best(gain, start * width, width);
        double[] score = new double[width];
        Arrays.fill(score, Double.NEGATIVE_INFINITY);
        score[startAt] = 0;
        byte[][] came = new byte[rows + 1][];
        for (int row = 1; row <= rows; row++) {
            came[row] = new byte[width];
            score = reached(score, gain, (start + row) % rows * width, came[row]);
        }
        int[] path = new int[rows];
        int k = startAt;
        for (int row = rows; row >= 1; row--) {
            path[(start + row) % rows] = k;
            k += came[row][k];
        }
        return path;
    }

    /** The same from the first row to the last, beginning and ending anywhere on them. */
    static int[] open(float[] gain, int width) {
        int rows = gain.length / width;
        double[] score = new double[width];
        byte[][] came = new byte[rows][width];
        for (int row = 0; row < rows; row++) {
            score = reached(score, gain, row * width, came[row]);
        }
        int k = 0;
        for (int j = 1; j < width; j++) {
            k = score[j] > score[k] ? j : k;
        }
        int[] path = new int[rows];
        for (int row = rows - 1; row >= 0; row--) {
            path[row] = k;
            k += came[row][k];
        }
        return path;
    }

    /** The row whose greatest gain is most above what its places gain on average. */
    private static int clearest(float[] gain, int width) {
        int clearest = 0;
        double most = -1;
        for (int row = 0; row < gain.length / width; row++) {
            double sum = 0;
            for (int k = 0; k < width; k++) {
                sum += gain[row * width + k];
            }
            double clear = gain[row * width + best(gain, row * width, width)] - sum / width;
            if (clear > most) {
                most = clear;
                clearest = row;
            }
        }
        return clearest;
    }

    /** The place of greatest gain on the row whose gains begin at an index. */
    private static int best(float[] gain, int from, int width) {
        int best = 0;
        for (int k = 1; k < width; k++) {
            best = gain[from + k] > gain[from + best] ? k : best;
        }
        return best;
    }

    /**
     * The best scores on the next row of a path.
     *
     * @param score the best on the row before
     * @param from where the next row's gains begin
     * @param came filled in: for each place, how far to the side the best way there comes from
     */
    private static double[] reached(double[] score, float[] gain, int from, byte[] came) {
        int width = score.length;
        double[] next = new double[width];
        for (int k = 0; k < width; k++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int j = -MOST_JUMP; j <= MOST_JUMP; j++) {
                if (k + j >= 0 && k + j < width) {
                    double reached = score[k + j] - JUMP_COST * j * j;
                    if (reached > best) {
                        best = reached;
                        came[k] = (byte) j;
                    }
                }
            }
            next[k] = best + gain[from + k];
        }
        return next;
    }
}
