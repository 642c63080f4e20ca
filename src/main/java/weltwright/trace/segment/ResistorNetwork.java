package weltwright.trace.segment;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import weltwright.image.parallel.ParallelPair;

/**
 * The potentials in a net of resistors over a picture, each node joined to its four neighbours, some nodes held fast.
 *
 * <p>Solved by successive over-relaxation (Young 1954) row by row, from one half everywhere. A row of a sweep needs the
 * row above it of the same sweep and the row below it of the sweep before, no more. So several sweeps go down the net
 * together, each two rows behind the one before it: what each does is the same as if they came one after another, but a
 * processor waits for none of them, as it would within a row, where each node needs the one to its left; and a second
 * processor takes the second half of the sweeps.
 *
 * <p>Stops before all is settled: what current reaches by the longest ways only is left near one half.
 */
final class ResistorNetwork {
    private static final float RELAXATION = 1.8f;

    private static final int MOST_SWEEPS = 200;

    /** Potentials that change less than this in a sweep are final. */
    private static final float SETTLED = 0.008f;

    /** Sweeps that go down the net in one thread, and in both. */
    private static final int TOGETHER = 4;

    private static final int IN_BOTH = 2 * TOGETHER;

    /** Rows from one of them to the next. */
    private static final int BEHIND = 2;

    /** Rows that one thread does before it tells the other. */
    private static final int TOLD_ROWS = 4;

    private final int columns;
    private final int rows;

    /** Nodes to a row in the arrays: one more than there are, so that no border is a special case; so are two rows. */
    private final int stride;

    private final float[] potential;
    private final boolean[] held;
    private final float[] right;
    private final float[] down;

    /** The free nodes, row by row: their places in the arrays, and where each row begins. */
    private int[] free = {};

    private int[] rowStart = {};

    /** For each free node how much of the potential to its left, right, above and below goes into its next one. */
    private float[] share = {};

    /** All nodes free at one half, and not joined. */
    ResistorNetwork(int columns, int rows) {
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

    private int at(int x, int y) {
        return (y + 1) * stride + x;
    }

    void hold(int x, int y, float potential) {
        this.potential[at(x, y)] = potential;
        held[at(x, y)] = true;
    }

    /** Joins a node to the next ones to its right and below, where there are any, by conductances that are not 0. */
    void join(int x, int y, float toRight, float toBelow) {
        right[at(x, y)] = x + 1 < columns ? toRight : 0;
        down[at(x, y)] = y + 1 < rows ? toBelow : 0;
    }

    /** The potentials, row by row. */
    float[] settled() {
        prepare();
        int sweeps = 0;
        do {
            sweeps += IN_BOTH;
        } while (sweepTogether() >= SETTLED && sweeps < MOST_SWEEPS);
        float[] settled = new float[columns * rows];
        for (int y = 0; y < rows; y++) {
            System.arraycopy(potential, at(0, y), settled, y * columns, columns);
        }
        return settled;
    }

    private void prepare() {
        rowStart = new int[rows + 1];
        free = new int[columns * rows];
        share = new float[4 * columns * rows];
        int count = 0;
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int i = at(x, y);
                if (!held[i]) {
                    float scale = RELAXATION / (right[i - 1] + right[i] + down[i - stride] + down[i]);
                    share[4 * count] = scale * right[i - 1];
                    share[4 * count + 1] = scale * right[i];
                    share[4 * count + 2] = scale * down[i - stride];
                    share[4 * count + 3] = scale * down[i];
                    free[count++] = i;
                }
            }
            rowStart[y + 1] = count;
        }
    }

    /** Some sweeps together; how far a potential moves in the last of them, at most. */
    private float sweepTogether() {
        AtomicInteger done = new AtomicInteger();
        return ParallelPair.of(() -> followed(done), () -> led(done)).first();
    }

    /**
     * The first half of the sweeps.
     *
     * @param done how many rows all of them have done, or more than there are where they have ended
     */
    private float led(AtomicInteger done) {
        float most = 0;
        try {
            for (int row = 0; row < rows + BEHIND * (TOGETHER - 1); row++) {
                most = Math.max(most, relaxRows(row));
                if (row % TOLD_ROWS == 0) {
                    done.setRelease(row + 1 - BEHIND * (TOGETHER - 1));
                }
            }
        } finally {
            done.setRelease(Integer.MAX_VALUE);
        }
        return most;
    }

    /** The second half, which keeps behind the first as its own sweeps keep behind each other. */
    private float followed(AtomicInteger done) {
        float most = 0;
        for (int row = 0; row < rows + BEHIND * (TOGETHER - 1); row++) {
            while (done.getAcquire() < row + BEHIND) {
                Thread.onSpinWait();
            }
            most = Math.max(most, relaxRows(row));
        }
        return most;
    }

    /** One row of each of the sweeps, of the first the given one; how far a potential moves in the last, at most. */
    private float relaxRows(int row) {
        int a = start(row);
        int b = start(row - BEHIND);
        int c = start(row - 2 * BEHIND);
        int d = start(row - 3 * BEHIND);
        int endA = start(row + 1);
        int endB = start(row + 1 - BEHIND);
        int endC = start(row + 1 - 2 * BEHIND);
        int endD = start(row + 1 - 3 * BEHIND);
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

    /** Where a row's free nodes begin; those of rows that are none begin where they end. */
    private int start(int row) {
        return rowStart[Math.max(0, Math.min(rows, row))];
    }

    /** Moves a potential towards the mean of its neighbours' and beyond, and says how far. */
    private float relax(int k) {
        int i = free[k];
        float own = potential[i];
        float next = (1 - RELAXATION) * own
                + share[4 * k + 1] * potential[i + 1]
                + share[4 * k + 2] * potential[i - stride]
                + share[4 * k + 3] * potential[i + stride]
                + share[4 * k] * potential[i - 1];
        potential[i] = next;
        return Math.abs(next - own);
    }
}
