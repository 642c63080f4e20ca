package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bands of two colours with normal noise of a known size. */
class ChannelMixtureTest {
    private static final int ROWS = 60;
    private static final int WIDTH = 24;
    private static final double NOISE = 3;
    private static final double[] FAR = {180, 185, 190};

    private static ChannelMixture.Mix mix(double... near) {
        Random random = new Random(2);
        float[] colour = new float[3 * ROWS * WIDTH];
        for (int i = 0; i < colour.length; i++) {
            boolean isNear = i / 3 % WIDTH < WIDTH / 2;
            colour[i] = (float) ((isNear ? near : FAR)[i % 3] + NOISE * random.nextGaussian());
        }
        return new ChannelMixture(colour, ROWS, WIDTH).mix(0, 20);
    }

    /**
     * The step of the mixture is the separation, and by Fisher (1936) of independent directions that is the root of the
     * sum of squared steps over their variance: the noise's 9 and what is always taken to be there, 4 in brightness and
     * 1 in the two directions of hue.
     */
    @Test
    void tellsTheSidesApartAsFarAsFisherSays() {
        double[] near = {150, 185, 230};
        ChannelMixture.Mix mix = mix(near);
        double step = 0;
        double sum = 0;
        double squares = 0;
        for (int k = 0; k < 3; k++) {
            step += mix.weights()[k] * (FAR[k] - near[k]);
            sum += FAR[k] - near[k];
            squares += Math.pow(FAR[k] - near[k], 2);
        }
        double bright = sum * sum / 3;
        double square = bright / (NOISE * NOISE + 4) + (squares - bright) / (NOISE * NOISE + 1);
        assertThat(step).isCloseTo(mix.separation(), within(0.05 * mix.separation()));
        assertThat(mix.separation()).isCloseTo(Math.sqrt(square), within(0.06 * Math.sqrt(square)));
    }

    @Test
    void knowsWhatMayBeAShade() {
        assertThat(mix(126, 129.5, 133).differenceFromShade())
                .as("the far side at 70 %")
                .isZero();
        assertThat(mix(54, 55.5, 57).differenceFromShade())
                .as("at 30 %, darker than a shade")
                .isEqualTo(1);
        assertThat(mix(90, 130, 170).differenceFromShade()).as("of another hue").isEqualTo(1);
    }
}
