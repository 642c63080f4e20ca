package weltwright.image.format;

import java.util.OptionalInt;
import java.util.stream.IntStream;
import weltwright.geometry.fit.OrderStatistic;

/**
 * Finds the row of a JPEG picture from which on the levels of a component are shifted by damage.
 *
 * <p>DC coefficients are stored as differences (ITU-T T.81, section F.1.1.5.1). Damage that leaves valid codes
 * therefore shifts all following blocks by the same amount, which shows as a step between two rows of MCUs over most of
 * the width. An edge in the scene is no such step: it would have to follow the border of the blocks to within a block,
 * over three quarters of the width, with the same step everywhere.
 *
 * <p>The steps:
 *
 * <ol>
 *   <li>for each row of MCUs and {@value #PLACES} columns where the damage may start, compute the step of each block
 *       against the block above it, and the steps before and after that: the border of a sheet of paper mostly takes
 *       two, as it crosses blocks, damage takes one;
 *   <li>take the median step as the shift; skip it where it is too small to matter;
 *   <li>report the row where most blocks have the same step, and none beside it.
 * </ol>
 */
final class DcShiftDetector {
    /** Smaller shifts, in grey levels, do not move an edge. Chosen by eye. */
    private static final double LEAST_LEVELS = 6;

    /** Steps that differ from the median by less than this, in grey levels, count as equal to it. Chosen by eye. */
    private static final double EVEN_LEVELS = 3;

    /** Part of the blocks of a row that must have the median step. Chosen by eye. */
    private static final double LEAST_PART = 0.75;

    /** Number of columns, evenly spaced, where the damage is assumed to start. Chosen by eye. */
    private static final int PLACES = 8;

    /** DC coefficient of a block that is uniformly one level bright: T.81, section A.3.3. */
    private static final double DC_PER_LEVEL = 8;

    private DcShiftDetector() {}

    /**
     * Returns the first row of MCUs whose levels are shifted; empty where there is none.
     *
     * @param dc dequantized DC coefficient of each block, row by row
     * @param stride number of blocks stored per row
     * @param across columns of blocks that hold picture
     * @param down rows of blocks that hold picture
     * @param v rows of blocks in an MCU
     * @param step quantization step of the DC coefficients
     */
    static OptionalInt firstRow(int[] dc, int stride, int across, int down, int v, int step) {
        double even = EVEN_LEVELS * DC_PER_LEVEL + step;
        double[] steps = new double[across];
        double[] beside = new double[across];
        for (int row = 1; (row + 1) * v < down; row++) {
            for (int place = 0; place < PLACES; place++) {
                int from = place * across / PLACES;
                for (int c = 0; c < across; c++) {
                    int at = (c < from ? (row + 1) * v : row * v) * stride + c;
                    steps[c] = dc[at] - dc[at - stride];
                    double before = at >= 2 * stride ? dc[at - stride] - dc[at - 2 * stride] : 0;
                    double after = (row + 2) * v < down ? dc[at + stride] - dc[at] : 0;
                    beside[c] = Math.max(Math.abs(before), Math.abs(after));
                }
                double[] sorted = steps.clone();
                double shift = OrderStatistic.median(sorted);
                if (Math.abs(shift) >= LEAST_LEVELS * DC_PER_LEVEL) {
                    long alike = IntStream.range(0, across)
                            .filter(c -> Math.abs(steps[c] - shift) <= even && beside[c] <= even)
                            .count();
                    if (alike >= LEAST_PART * across) {
                        return OptionalInt.of(row);
                    }
                }
            }
        }
        return OptionalInt.empty();
    }
}
