package weltwright.trace.segment;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import weltwright.image.parallel.ParallelPair;

/**
 * Computes the potentials in a grid of resistors, each node connected to its four neighbours, some nodes at fixed
 * potentials.
 *
 * <p>Solves by successive over-relaxation (Young 1954), row by row, from one half everywhere. A row of a sweep depends
 * only on the row above it in the same sweep and on the row below it in the sweep before. So several sweeps run down
 * the grid together, each two rows behind the one before it. The result is that of consecutive sweeps, but the
 * processor need not wait for a neighbour's result, as it must within a row; and a second thread runs half of them.
 *
 * <p>The iteration stops early: potentials far from any fixed node stay near one half.
 */
final class ResistorNetwork {
    /** Factor of over-relaxation, between 1 and 2; chosen by trial for speed. */
    private static final float RELAXATION = 1.8f;

    /** Bounds the time for a network without a path between its fixed nodes; chosen by eye. */
    private static final int MAX_SWEEPS = 3000;

    /** The iteration stops where no potential changes by more than this in a sweep; chosen by eye. */
    private static final float CONVERGED = 0.0005f;

    /** Sweeps that run down the grid together in one thread; {@link #relaxRows} is written for four. */
    private static final int SWEEPS_PER_THREAD = 4;

    private static final int SWEEPS_PER_RUN = 2 * SWEEPS_PER_THREAD;

    /** Rows by which a sweep follows the one before it: the least that makes them independent. */
    private static final int LAG_ROWS = 2;

    /** Rows that the leading thread does before it signals the following one; chosen by eye. */
    private static final int SIGNAL_ROWS = 4;

    private final int columns;
    private final int rows;

    /** Nodes of a row in the arrays, with one of padding; two rows of padding, too, spare the border a special case. */
    private final int stride;

    private final float[] potential;
    private final boolean[] fixed;
    private final float[] right;
    private final float[] down;

    /** For each node the conductance to a fixed potential of its own, and the current that it brings at 0. */
    private final float[] pull;

    private final float[] current;

    /** Indices of the free nodes in the arrays, row by row, and the first of each row. */
    private int[] free = {};

    private int[] rowStart = {};

    /** For each free node the weights of the potentials to its left, right, above and below in its next one. */
    private float[] weight = {};

    /** Creates a grid of free, unconnected nodes at one half. */
    ResistorNetwork(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        stride = columns + 1;
        int nodes = stride * (rows + 2);
        potential = new float[nodes];
        Arrays.fill(potential, 0.5f);
        fixed = new boolean[nodes];
        right = new float[nodes];
        down = new float[nodes];
        pull = new float[nodes];
        current = new float[nodes];
    }

    private int at(int x, int y) {
        return (y + 1) * stride + x;
    }

    /** Fixes a node at a potential. */
    void fix(int x, int y, float potential) {
        this.potential[at(x, y)] = potential;
        fixed[at(x, y)] = true;
    }

    /** Connects a node by a conductance to a potential of its own. */
    void pull(int x, int y, float conductance, float potential) {
        pull[at(x, y)] = conductance;
        current[at(x, y)] = conductance * potential;
    }

    /** Connects a node to its neighbours to the right and below, where there are any, by conductances above 0. */
    void connect(int x, int y, float toRight, float toBelow) {
        right[at(x, y)] = x + 1 < columns ? toRight : 0;
        down[at(x, y)] = y + 1 < rows ? toBelow : 0;
    }

    /** Iterates and returns the potentials, row by row. */
    float[] solve() {
        prepare();
        int sweeps = 0;
        do {
            sweeps += SWEEPS_PER_RUN;
        } while (sweep() >= CONVERGED && sweeps < MAX_SWEEPS);
        float[] solution = new float[columns * rows];
        for (int y = 0; y < rows; y++) {
            System.arraycopy(potential, at(0, y), solution, y * columns, columns);
        }
        return solution;
    }

    private void prepare() {
        rowStart = new int[rows + 1];
        free = new int[columns * rows];
        weight = new float[4 * columns * rows];
        int count = 0;
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int i = at(x, y);
                if (!fixed[i]) {
                    float scale = RELAXATION / (right[i - 1] + right[i] + down[i - stride] + down[i] + pull[i]);
                    current[i] *= scale;
                    weight[4 * count] = scale * right[i - 1];
                    weight[4 * count + 1] = scale * right[i];
                    weight[4 * count + 2] = scale * down[i - stride];
                    weight[4 * count + 3] = scale * down[i];
                    free[count++] = i;
                }
            }
            rowStart[y + 1] = count;
        }
    }

    /** Runs some sweeps and returns the greatest change of a potential in the last of them. */
    private float sweep() {
        AtomicInteger rowsDone = new AtomicInteger();
        return ParallelPair.of(() -> runFollowingSweeps(rowsDone), () -> runLeadingSweeps(rowsDone))
                .first();
    }

    /**
     * Runs the first half of the sweeps.
     *
     * @param rowsDone set to the number of rows that all of them have done; at the end to the greatest integer
     */
    private float runLeadingSweeps(AtomicInteger rowsDone) {
        float most = 0;
        try {
            for (int row = 0; row < rows + LAG_ROWS * (SWEEPS_PER_THREAD - 1); row++) {
                most = Math.max(most, relaxRows(row));
                if (row % SIGNAL_ROWS == 0) {
                    rowsDone.setRelease(row + 1 - LAG_ROWS * (SWEEPS_PER_THREAD - 1));
                }
            }
        } finally {
            rowsDone.setRelease(Integer.MAX_VALUE);
        }
        return most;
    }

    /** Runs the second half of the sweeps, which follows the first half by the same lag. */
    private float runFollowingSweeps(AtomicInteger rowsDone) {
        float most = 0;
        for (int row = 0; row < rows + LAG_ROWS * (SWEEPS_PER_THREAD - 1); row++) {
            while (rowsDone.getAcquire() < row + LAG_ROWS) {
                Thread.onSpinWait();
            }
            most = Math.max(most, relaxRows(row));
        }
        return most;
    }

    /** Relaxes the given row in the first of the sweeps, earlier rows in the others; returns the last one's change. */
    private float relaxRows(int row) {
        int a = start(row);
        int b = start(row - LAG_ROWS);
        int c = start(row - 2 * LAG_ROWS);
        int d = start(row - 3 * LAG_ROWS);
        int endA = start(row + 1);
        int endB = start(row + 1 - LAG_ROWS);
        int endC = start(row + 1 - 2 * LAG_ROWS);
        int endD = start(row + 1 - 3 * LAG_ROWS);
        float most = 0;
        int common = Math.min(Math.min(endA - a, endB - b), Math.min(endC - c, endD - d));
        for (int k = 0; k < common; k++) {
            relax(a++);
            relax(b++);
            relax(c++);
            most = Math.max(most, relax(d++));
        }
        relax(a, endA);
        relax(b, endB);
        relax(c, endC);
        return Math.max(most, relax(d, endD));
    }

    private float relax(int from, int to) {
        float most = 0;
        for (int k = from; k < to; k++) {
            most = Math.max(most, relax(k));
        }
        return most;
    }

    /** Returns the index of a row's first free node; rows outside of the grid are empty. */
    private int start(int row) {
        return rowStart[Math.max(0, Math.min(rows, row))];
    }

    /** Over-relaxes one potential and returns its change. */
    private float relax(int k) {
        int i = free[k];
        float own = potential[i];
        float next = (1 - RELAXATION) * own
                + current[i]
                + weight[4 * k + 1] * potential[i + 1]
                + weight[4 * k + 2] * potential[i - stride]
                + weight[4 * k + 3] * potential[i + stride]
                + weight[4 * k] * potential[i - 1];
        potential[i] = next;
        return Math.abs(next - own);
    }
}
