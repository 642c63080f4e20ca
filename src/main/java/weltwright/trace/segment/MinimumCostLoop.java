package weltwright.trace.segment;

import java.util.Arrays;

/**
 * Finds the closed path of least cost around an object on a raster: its outline, even where parts of it are faint. The
 * path bridges a gap by a straight line.
 *
 * <p>Cuts the raster open from the object outwards, so that the closed path is a shortest path from one bank of the cut
 * to the other, found by Dijkstra's algorithm (1959) on two sheets of the raster that are connected at the cut.
 */
final class MinimumCostLoop {
    private static final int[] STEP_X = {1, 1, 0, -1, -1, -1, 0, 1};
    private static final int[] STEP_Y = {0, 1, 1, 1, 0, -1, -1, -1};

    /** Lengths of the even and the odd steps, in pixels. */
    private static final float[] STEP_LENGTH = {1, (float) Math.sqrt(2)};

    private final float[] cost;
    private final int columns;
    private final int rows;
    private final int cutColumn;
    private final int cutRow;

    /**
     * Prepares the search.
     *
     * @param cost of a step of one pixel's length at each pixel, row by row, not negative; infinite where forbidden
     * @param columns of the raster
     * @param cutColumn the cut runs between this column and the one to its left,
     * @param cutRow from this row upwards; the object contains its lower end
     */
    MinimumCostLoop(float[] cost, int columns, int cutColumn, int cutRow) {
        this.cost = cost;
        this.columns = columns;
        this.rows = cost.length / columns;
        this.cutColumn = cutColumn;
        this.cutRow = cutRow;
    }

    /** @param pixels in order along the path: row times columns plus column */
    record Path(int[] pixels, double cost) {}

    /** Stands for no path. */
    static final Path NONE = new Path(new int[0], Double.POSITIVE_INFINITY);

    /**
     * Returns the cheapest closed path that crosses the cut at a row, or {@link #NONE} where all cost {@code below} or
     * more.
     */
    Path through(int row, double below) {
        int n = columns * rows;
        float[] reached = new float[2 * n];
        Arrays.fill(reached, Float.POSITIVE_INFINITY);
        int[] from = new int[2 * n];
        int start = row * columns + cutColumn;
        int goal = n + start;
        DistanceHeap open = new DistanceHeap();
        reached[start] = 0;
        from[start] = -1;
        open.add(0, start);
        while (!open.isEmpty()) {
            float sofar = open.nearest();
            int node = open.take();
            if (sofar > reached[node]) {
                continue;
            }
            if (node == goal) {
                return new Path(back(from, goal), sofar);
            }
            int pixel = node < n ? node : node - n;
            boolean interior = isInterior(pixel);
            for (int step = 0; step < 8; step++) {
                int to = interior ? node + STEP_Y[step] * columns + STEP_X[step] : neighbour(node, step);
                if (to >= 0) {
                    float sum = sofar + STEP_LENGTH[step % 2] * (cost[pixel] + cost[to < n ? to : to - n]) / 2;
                    if (sum < reached[to] && sum < below) {
                        reached[to] = sum;
                        from[to] = node;
                        open.add(sum, to);
                    }
                }
            }
        }
        return NONE;
    }

    /** Returns whether all steps from a pixel stay on its sheet and on the raster. */
    private boolean isInterior(int pixel) {
        int y = pixel / columns;
        int x = pixel - y * columns;
        return x > 0
                && y > 0
                && x < columns - 1
                && y < rows - 1
                && (x < cutColumn - 1 || x > cutColumn || y > cutRow + 1);
    }

    /** Returns the node a step leads to, on the other sheet where it crosses the cut; −1 where it leaves the raster. */
    private int neighbour(int node, int step) {
        int n = columns * rows;
        int sheet = node / n;
        int x = node % n % columns;
        int y = node % n / columns;
        int toX = x + STEP_X[step];
        int toY = y + STEP_Y[step];
        if (toX < 0 || toY < 0 || toX >= columns || toY >= rows) {
            return -1;
        }
        if (Math.max(y, toY) <= cutRow) {
            if (x == cutColumn - 1 && toX == cutColumn) {
                sheet++;
            } else if (x == cutColumn && toX == cutColumn - 1) {
                sheet--;
            }
        }
        return sheet < 0 || sheet > 1 ? -1 : sheet * n + toY * columns + toX;
    }

    private int[] back(int[] from, int goal) {
        int length = 0;
        for (int node = goal; node >= 0; node = from[node]) {
            length++;
        }
        int[] path = new int[length - 1];
        int node = goal;
        for (int i = path.length - 1; i >= 0; i--) {
            path[i] = node % (columns * rows);
            node = from[node];
        }
        return path;
    }

    /**
     * A binary heap (Williams 1964) of nodes by distance. The bits of distances that are not negative have the order of
     * the distances, so a {@code long} holds a distance and its node.
     */
    private static final class DistanceHeap {
        private long[] heap = new long[1024];
        private int size;

        boolean isEmpty() {
            return size == 0;
        }

        void add(float distance, int node) {
            if (size == heap.length) {
                heap = Arrays.copyOf(heap, 2 * size);
            }
            long entry = (long) Float.floatToRawIntBits(distance) << 32 | node;
            int at = size++;
            for (int above = (at - 1) / 2; at > 0 && heap[above] > entry; above = (at - 1) / 2) {
                heap[at] = heap[above];
                at = above;
            }
            heap[at] = entry;
        }

        float nearest() {
            return Float.intBitsToFloat((int) (heap[0] >>> 32));
        }

        /** Removes and returns the nearest node. */
        int take() {
            int node = (int) heap[0];
            long last = heap[--size];
            int at = 0;
            for (int below = 1; below < size; below = 2 * at + 1) {
                below += below + 1 < size && heap[below + 1] < heap[below] ? 1 : 0;
                if (heap[below] >= last) {
                    break;
                }
                heap[at] = heap[below];
                at = below;
            }
            heap[at] = last;
            return node;
        }
    }
}
