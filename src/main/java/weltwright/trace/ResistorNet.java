package weltwright.trace;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The potentials in a net of resistors over a picture, some of them held fast.
 *
 * <p>Successive over-relaxation settles quickly what lies between neighbours, and slowly what lies far from all that is
 * held. So a net of half the fineness is settled first, and its potentials are where the finer one begins (the cascade of
 * Bornemann and Deuflhard 1996, "The cascadic multigrid method for elliptic problems"). A pixel's neighbours are all of
 * the other colour of a chessboard, so one colour at a time can be relaxed in any order.
 */
final class ResistorNet {
    /** Nets with fewer nodes to a side begin from nothing. */
    private static final int COARSEST = 16;

    private static final float RELAXATION = 1.8f;

    private static final int MOST_SWEEPS = 400;

    /** Potentials that change less than this in a sweep are final. */
    private static final float SETTLED = 0.001f;

    private final int columns;
    private final int rows;

    /** Nodes to a row in the arrays: one more than there are, without resistors, so that no border is a special case. */
    private final int stride;

    private final float[] potential;
    private final boolean[] held;
    private final float[] right;
    private final float[] down;

    /** All nodes free at one half, all resistors without conductance. */
    ResistorNet(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        stride = columns + 1;
        int nodes = stride * (rows + 2);
        potential = new float[nodes];
        Arrays.fill(potential, 0.5f);
        held = new boolean[nodes];
        right = new float[nodes];
        down = new float[nodes];
    }

    /** The place of a node in the arrays; a row of the padding comes first. */
    private int at(int x, int y) {
        return (y + 1) * stride + x;
    }

    void hold(int x, int y, float at) {
        potential[at(x, y)] = at;
        held[at(x, y)] = true;
    }

    /** Joins a node to the next ones, where there are any. */
    void join(int x, int y, float toRight, float toBelow) {
        right[at(x, y)] = x + 1 < columns ? toRight : 0;
        down[at(x, y)] = y + 1 < rows ? toBelow : 0;
    }

    /** Row by row. */
    float[] settled() {
        settle();
        float[] settled = new float[columns * rows];
        for (int y = 0; y < rows; y++) {
            System.arraycopy(potential, at(0, y), settled, y * columns, columns);
        }
        return settled;
    }

    private void settle() {
        if (Math.min(columns, rows) >= COARSEST) {
            ResistorNet coarser = coarser();
            coarser.settle();
            for (int y = 0; y < rows; y++) {
                for (int x = 0; x < columns; x++) {
                    if (!held[at(x, y)]) {
                        potential[at(x, y)] = coarser.potential[coarser.at(x / 2, y / 2)];
                    }
                }
            }
        }
        int[] red = free(0);
        int[] black = free(1);
        float[] redShare = share(red);
        float[] blackShare = share(black);
        float most = SETTLED;
        for (int sweep = 0; sweep < MOST_SWEEPS && most >= SETTLED; sweep++) {
            most = Math.max(relax(red, redShare), relax(black, blackShare));
        }
    }

    /** The free nodes of one colour of the chessboard that are joined to others. */
    private int[] free(int colour) {
        return IntStream.range(0, rows)
                .flatMap(y -> IntStream.range(0, columns)
                        .filter(x -> (x + y) % 2 == colour)
                        .map(x -> at(x, y)))
                .filter(i -> !held[i] && conductance(i) > 0)
                .toArray();
    }

    private float conductance(int i) {
        return right[i - 1] + right[i] + down[i - stride] + down[i];
    }

    /** By how much a node moves for each unit of current into it. */
    private float[] share(int[] nodes) {
        float[] share = new float[nodes.length];
        for (int k = 0; k < nodes.length; k++) {
            share[k] = RELAXATION / conductance(nodes[k]);
        }
        return share;
    }

    /** Moves potentials towards the mean of their neighbours' and beyond, and says how far at most. */
    private float relax(int[] nodes, float[] share) {
        float most = 0;
        for (int k = 0; k < nodes.length; k++) {
            int i = nodes[k];
            float own = potential[i];
            float current = right[i - 1] * (potential[i - 1] - own)
                    + right[i] * (potential[i + 1] - own)
                    + down[i - stride] * (potential[i - stride] - own)
                    + down[i] * (potential[i + stride] - own);
            float move = current * share[k];
            potential[i] = own + move;
            most = Math.max(most, Math.abs(move));
        }
        return most;
    }

    /**
     * Each four nodes as one, held where one of them is. From middle to middle a walker crosses half of one, a resistor
     * between them and half of the next, one after another, by two ways side by side.
     */
    private ResistorNet coarser() {
        ResistorNet coarser = new ResistorNet((columns + 1) / 2, (rows + 1) / 2);
        for (int y = 0; y < coarser.rows; y++) {
            for (int x = 0; x < coarser.columns; x++) {
                float sum = 0;
                int count = 0;
                float toRight = 0;
                float toBelow = 0;
                for (int k = 0; k < 2; k++) {
                    for (int j = 0; j < 2 && 2 * y + k < rows && 2 * x + j < columns; j++) {
                        int i = at(2 * x + j, 2 * y + k);
                        sum += held[i] ? potential[i] : 0;
                        count += held[i] ? 1 : 0;
                    }
                    if (2 * x + 2 < columns && 2 * y + k < rows) {
                        toRight += inSeries(right, at(2 * x, 2 * y + k), 1);
                    }
                    if (2 * y + 2 < rows && 2 * x + k < columns) {
                        toBelow += inSeries(down, at(2 * x + k, 2 * y), stride);
                    }
                }
                coarser.join(x, y, toRight, toBelow);
                if (count > 0) {
                    coarser.hold(x, y, sum / count);
                }
            }
        }
        return coarser;
    }

    /** The conductance of half a resistor, the next one, and half of the one after that if there is one. */
    private static float inSeries(float[] conductance, int from, int step) {
        float last = conductance[from + 2 * step];
        float resistance = 0.5f / conductance[from] + 1 / conductance[from + step] + (last > 0 ? 0.5f / last : 0);
        return 1 / resistance;
    }
}
