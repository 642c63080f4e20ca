package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Rasters so small that every path through them can be tried, and clear ones whose path is seen at a glance. */
class MaximumGainPathTest {
    private static final int WIDTH = 4;
    private static final int ROWS = 5;

    /** What {@link MaximumGainPath} says that a move to the side costs, by its square. */
    private static final double JUMP_COST = 0.04;

    @Property(tries = 100)
    void noOtherOpenPathGainsMore(@ForAll @IntRange(min = 0, max = 1 << 20) int seed) {
        float[] gain = random(seed);
        int[] path = MaximumGainPath.open(gain, WIDTH);

        assertThat(score(path, gain, false)).isCloseTo(most(gain, false, -1, 0), within(1e-6));
    }

    @Property(tries = 100)
    void noOtherClosedPathThroughItsClearestPlaceGainsMore(@ForAll @IntRange(min = 0, max = 1 << 20) int seed) {
        float[] gain = random(seed);
        gain[2 * WIDTH + 1] = 3;
        int[] path = MaximumGainPath.closed(gain, WIDTH);

        assertThat(path[2]).isEqualTo(1);
        assertThat(score(path, gain, true)).isCloseTo(most(gain, true, 2, 1), within(1e-6));
    }

    /** Two stretches of edge on one line, nothing between them but the same grey everywhere. */
    @Test
    void goesStraightOverAGapAndRoundTheEnd() {
        int width = 21;
        int rows = 60;
        float[] gain = new float[rows * width];
        for (int row = 0; row < rows; row++) {
            Arrays.fill(gain, row * width, (row + 1) * width, 0.1F);
            if (row > 10 && row < 20 || row > 30 && row < 50) {
                gain[row * width + 13] = 1;
            }
        }
        assertThat(MaximumGainPath.closed(gain, width)).containsOnly(13);
        assertThat(MaximumGainPath.open(gain, width)).containsOnly(13);
    }

    /** A step of the edge by ten places takes two rows at five each; no less is ever taken. */
    @Test
    void movesByFivePlacesFromRowToRowAtMost() {
        int width = 21;
        int rows = 40;
        float[] gain = new float[rows * width];
        for (int row = 0; row < rows; row++) {
            gain[row * width + (row < 20 ? 4 : 14)] = 100;
        }
        int[] path = MaximumGainPath.open(gain, width);

        assertThat(path[18]).isEqualTo(4);
        assertThat(path[21]).isEqualTo(14);
        for (int row = 1; row < rows; row++) {
            assertThat(Math.abs(path[row] - path[row - 1])).isLessThanOrEqualTo(5);
        }
    }

    private static float[] random(int seed) {
        Random random = new Random(seed);
        float[] gain = new float[WIDTH * ROWS];
        for (int i = 0; i < gain.length; i++) {
            gain[i] = random.nextFloat() * (seed % 2 == 0 ? 1 : 0.2F);
        }
        return gain;
    }

    /** The most that any path gains; where a row is named, of those through its place. */
    private static double most(float[] gain, boolean closed, int throughRow, int throughPlace) {
        double most = Double.NEGATIVE_INFINITY;
        for (int number = 0; number < Math.pow(WIDTH, ROWS); number++) {
            int[] path = new int[ROWS];
            int left = number;
            for (int row = 0; row < ROWS; row++) {
                path[row] = left % WIDTH;
                left /= WIDTH;
            }
            if (throughRow < 0 || path[throughRow] == throughPlace) {
                most = Math.max(most, score(path, gain, closed));
            }
        }
        return most;
    }

    private static double score(int[] path, float[] gain, boolean closed) {
        double score = 0;
        for (int row = 0; row < ROWS; row++) {
            score += gain[row * WIDTH + path[row]];
            if (row > 0 || closed) {
                int jump = path[row] - path[Math.floorMod(row - 1, ROWS)];
                score -= JUMP_COST * jump * jump;
            }
        }
        return score;
    }
}
