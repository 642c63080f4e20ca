package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Levels of 60 rows of 80 blocks, eight units of DC coefficient to a level: ITU-T T.81, section A.3.3. */
class DcShiftDetectorTest {
    private static final int ACROSS = 80;
    private static final int DOWN = 60;
    private static final int STEP = 4;

    @Test
    void findsTheFirstShiftedRow() {
        int[] dc = light();
        shift(dc, 20 * ACROSS + 33, dc.length, 10 * 8);

        assertThat(DcShiftDetector.firstRow(dc, ACROSS, ACROSS, DOWN, 1, STEP)).hasValue(20);
    }

    @Test
    void ignoresGradualShading() {
        assertThat(DcShiftDetector.firstRow(light(), ACROSS, ACROSS, DOWN, 1, STEP))
                .isEmpty();
    }

    /** As the edge of a sheet that lies straight in the picture, with the table to both sides of it. */
    @Test
    void ignoresAnEdgeOverTwoThirdsOfTheWidth() {
        int[] dc = light();
        for (int row = 20; row < DOWN; row++) {
            shift(dc, row * ACROSS + 13, row * ACROSS + 67, 90 * 8);
        }

        assertThat(DcShiftDetector.firstRow(dc, ACROSS, ACROSS, DOWN, 1, STEP)).isEmpty();
    }

    /** As that of a sheet that lies nearly straight: its border rises by a block over two thirds of the width. */
    @Test
    void ignoresAnEdgeThatCrossesBlocks() {
        int[] dc = light();
        for (int column = 5; column < 72; column++) {
            double border = 21 - column / 60.0;
            for (int row = 0; row < DOWN; row++) {
                double below = Math.max(0, Math.min(1, row + 1 - border));
                dc[row * ACROSS + column] -= (int) Math.round(8 * 12 * below);
            }
        }

        assertThat(DcShiftDetector.firstRow(dc, ACROSS, ACROSS, DOWN, 1, STEP)).isEmpty();
    }

    private static int[] light() {
        Random noise = new Random(3);
        int[] dc = new int[ACROSS * DOWN];
        for (int i = 0; i < dc.length; i++) {
            dc[i] = 8 * (i / ACROSS) + 4 * (i % ACROSS) + noise.nextInt(9) - 4;
        }
        return dc;
    }

    private static void shift(int[] dc, int from, int to, int by) {
        for (int i = from; i < to; i++) {
            dc[i] += by;
        }
    }
}
