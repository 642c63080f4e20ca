package weltwright.trace.segment;

import java.util.Arrays;

/**
 * Computes the potentials in a grid of resistors, each node connected to its four neighbours, some nodes at fixed
 * potentials.
 *
 * <p>Solves by successive over-relaxation (Young 1954) from one half everywhere, in the order of a chessboard: first
 * all black nodes, whose neighbours are white, then all white ones. So no node waits for the one before it.
 *
 * <p>The number of sweeps is fixed. Potentials behind clear edges, far from any fixed node, may then still be near one
 * half.
 */
final class ResistorNetwork {
    /**
     * Factor of over-relaxation, between 1 and 2. Chosen together with {@link #SWEEPS}, of 1.8 to 1.99, on the networks
     * of six photos, of 94,000 to 720,000 free nodes: after this many sweeps at most 44 lie on the other side of one
     * half than after 4,000 sweeps.
     */
    private static final float RELAXATION = 1.95f;

    private static final int SWEEPS = 200;

    private final int columns;
    private final int rows;

    /** Nodes of one colour in a row of the arrays, with one of padding; a row of padding at both ends, too. */
    private final int stride;

    private final HalfGrid black;
    private final HalfGrid white;

    /** Creates a grid of free, unconnected nodes at one half. */
    ResistorNetwork(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        stride = (columns + 1) / 2 + 1;
        black = new HalfGrid(stride * (rows + 2) + 1);
        white = new HalfGrid(stride * (rows + 2) + 1);
    }

    /** The black or the white nodes, and what brings each its next potential. */
    private static final class HalfGrid {
        final float[] potential;
        final boolean[] fixed;

        /** Conductances to the neighbours, and to a fixed potential of the node's own. */
        final float[] left;

        final float[] right;
        final float[] above;
        final float[] below;
        final float[] pull;

        /** The current that the node's own fixed potential brings while the node is at 0. */
        final float[] current;

        HalfGrid(int nodes) {
            potential = new float[nodes];
            Arrays.fill(potential, 0.5f);
            fixed = new boolean[nodes];
            left = new float[nodes];
            right = new float[nodes];
            above = new float[nodes];
            below = new float[nodes];
            pull = new float[nodes];
            current = new float[nodes];
        }

        /** Scales conductances and currents to those of a relaxation; a fixed node relaxes to its own potential. */
        void prepare() {
            for (int i = 0; i < potential.length; i++) {
                float sum = left[i] + right[i] + above[i] + below[i] + pull[i];
                float scale = fixed[i] || sum == 0 ? 0 : RELAXATION / sum;
                left[i] *= scale;
                right[i] *= scale;
                above[i] *= scale;
                below[i] *= scale;
                current[i] = scale == 0 ? RELAXATION * potential[i] : scale * current[i];
            }
        }

        /**
         * Over-relaxes the nodes of one row.
         *
         * @param toLeft difference of the indices of a node's left neighbour and the node: 0 or -1
         */
        void relax(float[] neighbours, int from, int to, int toLeft, int stride) {
            for (int i = from; i < to; i++) {
                potential[i] = (1 - RELAXATION) * potential[i]
                        + current[i]
                        + left[i] * neighbours[i + toLeft]
                        + right[i] * neighbours[i + toLeft + 1]
                        + above[i] * neighbours[i - stride]
                        + below[i] * neighbours[i + stride];
            }
        }
    }

    private HalfGrid half(int x, int y) {
        return (x + y) % 2 == 0 ? black : white;
    }

    private int at(int x, int y) {
        return (y + 1) * stride + 1 + x / 2;
    }

    /** Fixes a node at a potential. */
    void fix(int x, int y, float potential) {
        half(x, y).potential[at(x, y)] = potential;
        half(x, y).fixed[at(x, y)] = true;
    }

    /** Connects a node by a conductance to a potential of its own. */
    void pull(int x, int y, float conductance, float potential) {
        half(x, y).pull[at(x, y)] = conductance;
        half(x, y).current[at(x, y)] = conductance * potential;
    }

    /** Connects a node to its neighbours to the right and below, where there are any, by conductances above 0. */
    void connect(int x, int y, float toRight, float toBelow) {
        HalfGrid own = half(x, y);
        HalfGrid other = own == black ? white : black;
        if (x + 1 < columns) {
            own.right[at(x, y)] = toRight;
            other.left[at(x + 1, y)] = toRight;
        }
        if (y + 1 < rows) {
            own.below[at(x, y)] = toBelow;
            other.above[at(x, y + 1)] = toBelow;
        }
    }

    /** Iterates and returns the potentials, row by row. */
    float[] solve() {
        black.prepare();
        white.prepare();
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            relax(black, white, 0);
            relax(white, black, 1);
        }
        float[] solution = new float[columns * rows];
        for (int i = 0; i < solution.length; i++) {
            int x = i % columns;
            int y = i / columns;
            solution[i] = half(x, y).potential[at(x, y)];
        }
        return solution;
    }

    /**
     * Over-relaxes all nodes of one half.
     *
     * @param firstColumn column of the first of them in the first row: 0 or 1
     */
    private void relax(HalfGrid own, HalfGrid other, int firstColumn) {
        for (int y = 0; y < rows; y++) {
            int from = at(0, y);
            int toLeft = (firstColumn + y) % 2 == 0 ? -1 : 0;
            own.relax(other.potential, from, from + stride - 1, toLeft, stride);
        }
    }
}
