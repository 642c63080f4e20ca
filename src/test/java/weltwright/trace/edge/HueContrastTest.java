package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bands across which brightness or hue changes at a known place. */
class HueContrastTest {
    private static final int ROWS = 80;
    private static final int WIDTH = 60;
    private static final int EDGE = 30;
    private static final double SAMPLES_PER_PX = 2;

    private static float[] across(double[] inside, double[] outside) {
        Random random = new Random(8);
        float[] colour = new float[3 * ROWS * WIDTH];
        for (int i = 0; i < colour.length; i++) {
            colour[i] = (float) ((i / 3 % WIDTH < EDGE ? inside : outside)[i % 3] + 0.3 * random.nextGaussian());
        }
        return HueContrast.across(colour, ROWS, WIDTH, SAMPLES_PER_PX);
    }

    @Test
    void isGreatestWhereTheHueChanges() {
        float[] contrast = across(new double[] {166, 160, 154}, new double[] {158, 160, 162});
        for (int row = 0; row < ROWS; row++) {
            int most = 0;
            for (int k = 0; k < WIDTH; k++) {
                most = contrast[row * WIDTH + k] > contrast[row * WIDTH + most] ? k : most;
            }
            assertThat(most).isBetween(EDGE - 1, EDGE);
            assertThat(contrast[row * WIDTH + most]).isGreaterThan(5);
            assertThat(contrast[row * WIDTH + 10]).isZero();
        }
    }

    @Test
    void saysNothingOfBrightnessAlone() {
        float[] contrast = across(new double[] {90, 90, 90}, new double[] {180, 180, 180});
        int some = 0;
        for (float c : contrast) {
            some += c > 1 ? 1 : 0;
        }
        assertThat(some).isLessThan(contrast.length / 200);
    }
}
