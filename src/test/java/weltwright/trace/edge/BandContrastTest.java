package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import weltwright.trace.appearance.ColourStatistics;
import weltwright.trace.appearance.GroundPrint;

/** Bands of known noise. */
class BandContrastTest {
    private static final int WIDTH = 40;
    private static final int ROWS = 1600;

    /** Only this many samples at the outer end of each row are the ground's own beyond doubt: an eighth. */
    private static final int OUTERMOST = 5;

    /** Its variance, whatever slope of light it lies on, the knife's own grain, and what is printed beside it. */
    @Test
    void measuresTheNoiseOfTheBareGround() {
        for (double sigma : new double[] {3, 8, 20}) {
            Random random = new Random(1);
            float[] colour = new float[3 * WIDTH * ROWS];
            GroundPrint[] print = bare(ROWS);
            for (int i = 0; i < WIDTH * ROWS; i++) {
                boolean outermost = i % WIDTH >= WIDTH - OUTERMOST;
                boolean onLine = i / WIDTH % 100 < 10;
                print[i] = onLine ? GroundPrint.LINE : GroundPrint.NONE;
                for (int c = 0; c < 3; c++) {
                    double light = 0.05 * (i / WIDTH) + 2 * (i % WIDTH) + 30 * c;
                    double off = (outermost ? sigma : 60) * random.nextGaussian() + (onLine ? 100 : 0);
                    colour[3 * i + c] = (float) (light + off);
                }
            }

            // The median of 15,000 sizes, partly of the same noise, scatters by about 1 %; their square by twice that.
            assertThat(BandContrast.noise(colour, print, ROWS, WIDTH))
                    .isCloseTo(sigma * sigma, within(0.06 * sigma * sigma));
        }
    }

    /**
     * In each column the colour bends as a known parabola from every eighth row to the next, so that what the second
     * differences are is known: 2, 4, 6, 8 and 1000 in equal parts. Their median, 6, is that of normal noise whose
     * second differences have the standard deviation 6/0.6745, and noise itself by the root of six less, as variances
     * 1, 4 and 1 add up.
     */
    @Test
    void takesTheMedianOfTheBends() {
        int rows = 64;
        double[] bends = {1000, 4, 2, 8, 6};
        float[] colour = new float[3 * WIDTH * rows];
        for (int i = 0; i < WIDTH * rows; i++) {
            int eighth = i / WIDTH / 8;
            int outer = i % WIDTH - (WIDTH - OUTERMOST);
            for (int c = 0; c < 3; c++) {
                colour[3 * i + c] = outer < 0 ? 0 : (float) (bends[outer] / 2 * eighth * eighth);
            }
        }

        assertThat(BandContrast.noise(colour, bare(rows), rows, WIDTH))
                .isCloseTo(Math.pow(6 / 0.6745, 2) / 6, within(1e-9));
    }

    /** No picture is without noise: rounding alone leaves some. */
    @Test
    void isNeverNone() {
        assertThat(BandContrast.noise(new float[3 * WIDTH * 64], bare(64), 64, WIDTH))
                .isEqualTo(ColourStatistics.NOISE);
        GroundPrint[] printed = bare(64);
        Arrays.fill(printed, GroundPrint.LINE);
        assertThat(BandContrast.noise(new float[3 * WIDTH * 64], printed, 64, WIDTH))
                .isEqualTo(ColourStatistics.NOISE);
    }

    private static GroundPrint[] bare(int rows) {
        GroundPrint[] print = new GroundPrint[WIDTH * rows];
        Arrays.fill(print, GroundPrint.NONE);
        return print;
    }
}
