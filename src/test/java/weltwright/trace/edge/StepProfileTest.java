package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Steps between two colours, blurred by a Gaussian: by symmetry the steepest place is where the step was. */
class StepProfileTest {
    private static final int WIDTH = 41;
    private static final double SAMPLES_PER_PX = 2;
    private static final double[] STEEL = {128, 127, 128};
    private static final double[] MAT = {32, 56, 42};

    /** The error function (Abramowitz and Stegun 1964, 7.1.26), to 1.5e-7. */
    private static double erf(double x) {
        double t = 1 / (1 + 0.3275911 * Math.abs(x));
        double tail = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
        return Math.signum(x) * (1 - tail * Math.exp(-x * x));
    }

    private static float[] row(double edge, double sigmaSamples, double hueShift) {
        float[] colour = new float[3 * WIDTH];
        for (int k = 0; k < WIDTH; k++) {
            double bright = (1 + erf((k - edge) / (sigmaSamples * Math.sqrt(2)))) / 2;
            // Photos store hue with more blur, and shifted by a fraction of a pixel.
            double hue = (1 + erf((k - edge - hueShift) / (2 * sigmaSamples * Math.sqrt(2)))) / 2;
            for (int c = 0; c < 3; c++) {
                double grey = 127 + bright * (43 - 127);
                colour[3 * k + c] = (float) (grey + (STEEL[c] - 127) * (1 - hue) + (MAT[c] - 43) * hue);
            }
        }
        return colour;
    }

    @ParameterizedTest
    @ValueSource(doubles = {18.7, 20, 20.4, 21.3})
    void findsABlurredStep(double edge) {
        StepProfile profile = StepProfile.of(row(edge, 2, 0), 0, WIDTH, 20, SAMPLES_PER_PX);
        assertThat(profile.steepest()).isCloseTo(edge, within(0.05));
    }

    /** The step is mostly of brightness, so hue that lags behind by a pixel moves it by a small part of that. */
    @ParameterizedTest
    @ValueSource(doubles = {19.2, 20.5})
    void isHardlyMovedByHue(double edge) {
        StepProfile profile = StepProfile.of(row(edge, 2, SAMPLES_PER_PX), 0, WIDTH, 20, SAMPLES_PER_PX);
        assertThat(profile.steepest()).isCloseTo(edge, within(0.15));
    }

    /** A parabola's vertex lies where it was put. */
    @ParameterizedTest
    @ValueSource(doubles = {19.6, 20, 20.3})
    void takesTheVertexOfAContrast(double vertex) {
        float[] contrast = new float[WIDTH];
        for (int k = 0; k < WIDTH; k++) {
            contrast[k] = (float) (100 - (k - vertex) * (k - vertex));
        }
        assertThat(StepProfile.ofContrast(contrast, 0, WIDTH, 20, SAMPLES_PER_PX)
                        .steepest())
                .isCloseTo(vertex, within(1e-3));
    }
}
