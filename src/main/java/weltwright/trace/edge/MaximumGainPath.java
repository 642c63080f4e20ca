package weltwright.trace.edge;

import java.util.Arrays;

/**
 * Finds the path through all rows of a raster, one sample on each, of greatest gain minus the cost of its moves to the
 * side. Over rows of equal gains it is as straight as possible.
 *
 * <p>Method: dynamic programming (Bellman 1957).
 */
final class MaximumGainPath {
    /** Greatest move from one row to the next, in samples; chosen by eye. */
    private static final int MAX_MOVE = 5;

    /** Cost of a move by one sample, in units of gain; it rises with the square of the move. Chosen by eye. */
    private static final double MOVE_COST = 0.04;

    private MaximumGainPath() {}

    /**
     * Returns the closed path, the last row followed by the first. It passes through the greatest gain of the row where
     * that exceeds the mean most; this is not always optimal, but trying each sample would take {@code width} times as
     * long.
     *
     * @param gain of each sample, row by row
     * @param width samples on a row
     * @return index of the sample on each row
     */
    static int[] closed(float[] gain, int width) {
        int rows = gain.length / width;
        int start = clearest(gain, width);
        int startAt = best(gain, start * width, width);
        double[] score = new double[width];
        Arrays.fill(score, Double.NEGATIVE_INFINITY);
        score[startAt] = 0;
        byte[][] move = new byte[rows + 1][];
        for (int row = 1; row <= rows; row++) {
            move[row] = new byte[width];
            score = nextScores(score, gain, (start + row) % rows * width, move[row]);
        }
        int[] path = new int[rows];
        int k = startAt;
        for (int row = rows; row >= 1; row--) {
            path[(start + row) % rows] = k;
            k += move[row][k];
        }
        return path;
    }

    /** Returns the open path from any sample of the first row to any of the last. */
    static int[] open(float[] gain, int width) {
        int rows = gain.length / width;
        double[] score = new double[width];
        byte[][] move = new byte[rows][width];
        for (int row = 0; row < rows; row++) {
            score = nextScores(score, gain, row * width, move[row]);
        }
        int k = 0;
        for (int j = 1; j < width; j++) {
            k = score[j] > score[k] ? j : k;
        }
        int[] path = new int[rows];
        for (int row = rows - 1; row >= 0; row--) {
            path[row] = k;
            k += move[row][k];
        }
        return path;
    }

    /** Returns the row whose greatest gain exceeds its mean gain most. */
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

    /** Returns the sample of greatest gain on the row that begins at an index. */
    private static int best(float[] gain, int from, int width) {
        int best = 0;
        for (int k = 1; k < width; k++) {
            best = gain[from + k] > gain[from + best] ? k : best;
        }
        return best;
    }

    /**
     * Returns the best scores on the next row.
     *
     * @param score the best scores on the row before
     * @param from index of the next row's first gain
     * @param move output: for each sample the offset of its predecessor
     */
    private static double[] nextScores(double[] score, float[] gain, int from, byte[] move) {
        int width = score.length;
        double[] next = new double[width];
        for (int k = 0; k < width; k++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int j = -MAX_MOVE; j <= MAX_MOVE; j++) {
                if (k + j >= 0 && k + j < width) {
                    double reached = score[k + j] - MOVE_COST * j * j;
                    if (reached > best) {
                        best = reached;
                        move[k] = (byte) j;
                    }
                }
            }
            next[k] = best + gain[from + k];
        }
        return next;
    }
}
