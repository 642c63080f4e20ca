package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ColourDistributionTest {
    /** Eight corners of a cube of side 4: each channel has the variance 4, and none goes with another. */
    @Test
    void independentChannelsGiveTheDensityThatTheFormulaGives() {
        double[] sums = new double[ColourStatistics.SIZE];
        for (int k = 0; k < 8; k++) {
            ColourStatistics.add(sums, 0, new float[] {100 + 4 * (k & 1), 100 + 2 * (k & 2), 100 + (k & 4)}, 0);
        }
        ColourDistribution normal = new ColourStatistics(sums).distribution(5);

        assertThat(sums[0]).isEqualTo(8);
        assertThat(normal.mean()).containsExactly(new double[] {102, 102, 102}, within(1e-9));
        // With noise of 5 in brightness and a quarter of it in hue, 3 in blue alone is 3 / 9 + 6 / 5.25 variances.
        assertThat(normal.squaredDistance(105, 102, 102)).isCloseTo(3 / 9.0 + 6 / 5.25, within(1e-9));
        assertThat(normal.squaredDistance(105, 99, 105)).isCloseTo(3 / 9.0 + 24 / 5.25, within(1e-9));
        // The density of the normal distribution but for (2 pi)^(3/2): exp(-square / 2) / sqrt(determinant).
        assertThat(normal.logLikelihood(105, 102, 102))
                .isCloseTo(-(3 / 9.0 + 6 / 5.25) / 2 - Math.log(9 * 5.25 * 5.25) / 2, within(1e-9));
    }

    /** Grey that gets brighter: far along brightness is near, the same in one channel is far. */
    @Test
    void whatGoesTogetherIsNear() {
        double[] sums = new double[ColourStatistics.SIZE];
        for (int level = 50; level <= 150; level++) {
            ColourStatistics.add(sums, 0, new float[] {level, level, level}, 0);
        }
        ColourDistribution normal = new ColourStatistics(sums).distribution(1);

        assertThat(normal.squaredDistance(130, 130, 130)).isLessThan(2);
        assertThat(normal.squaredDistance(130, 100, 100)).isGreaterThan(100);
    }
}
