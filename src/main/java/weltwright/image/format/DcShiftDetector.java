package weltwright.image.format;

import java.util.Arrays;
import java.util.OptionalInt;
import weltwright.geometry.fit.OrderStatistic;

/**
 * Finds the place in a JPEG scan from which on one component is shifted in level. The first coefficients of blocks are
 * stored as differences (ITU-T T.81, section F.1.1.5.1), so damage that leaves valid codes shifts all that follows by
 * the same amount. What is seen of it is a step along the border of a row of groups, the same over nearly all of the
 * width.
 *
 * <p>An edge in what was photographed is no such step: it would have to run along the border of the groups to within a
 * block, over three quarters of the width, with the same step everywhere.
 */
final class DcShiftDetector {
    /** A smaller shift moves no edge. Chosen by eye. */
    private static final double LEAST_LEVELS = 6;

    /** Blocks differ from those above them by less than this where nothing but light changes, rounding left out. */
    private static final double EVEN_LEVELS = 3;

    private static final double LEAST_PART = 0.75;

    /** Places in a row of groups at which the damage is tried to lie. */
    private static final int PLACES = 8;

    /** Of levels in first coefficients: T.81, section A.3.3, for a block of one level. */
    private static final double DC_PER_LEVEL = 8;

    private DcShiftDetector() {}

    /**
     * Finds where the levels of a picture are shifted from one row of groups to the next.
     *
     * @param dc first coefficient of each block, in units of 1, row by row
     * @param stride blocks from row to row
     * @param across how many of them the picture has
     * @param down how many rows of blocks the picture has
     * @param v rows of blocks in a row of groups
     * @param step quantization step
     * @return the first row of groups that is shifted; empty where there is none
     */
    static OptionalInt firstRow(int[] dc, int stride, int across, int down, int v, int step) {
        double even = EVEN_LEVELS * DC_PER_LEVEL + step;
        double[] steps = new double[across];
        for (int row = 1; (row + 1) * v < down; row++) {
            for (int place = 0; place < PLACES; place++) {
                int from = place * across / PLACES;
                for (int c = 0; c < across; c++) {
                    int at = (c < from ? (row + 1) * v : row * v) * stride + c;
                    steps[c] = dc[at] - dc[at - stride];
                }
                double[] sorted = steps.clone();
                double shift = OrderStatistic.median(sorted);
                if (Math.abs(shift) >= LEAST_LEVELS * DC_PER_LEVEL) {
                    long alike = Arrays.stream(steps)
                            .filter(s -> Math.abs(s - shift) <= even)
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
