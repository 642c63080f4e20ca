package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Lines of contrast 20 with normal noise of 1, of which a fifth are hidden: their contrast is 0. */
class LineVisibilityMeasureTest {
    private static List<Double> samples(double contrast) {
        Random random = new Random(9);
        return IntStream.range(0, 1000)
                .mapToObj(i -> (i % 5 == 0 ? 0 : contrast) + random.nextGaussian())
                .toList();
    }

    @Test
    void measuresTheVisibleLinesAndTheirNoise() {
        LineVisibilityMeasure<Double> measure = LineVisibilityMeasure.of(samples(20), d -> d);
        // The 0.7 quantile of all is that of 5 in 8 of the visible ones: 0.32 standard deviations above their mean.
        assertThat(measure.typical()).isCloseTo(20.32, within(0.15));
        // Half of those above the median of all lie within 0.425 standard deviations of it.
        assertThat(measure.noise()).isCloseTo(0.425, within(0.08));
        assertThat(measure.isReliable(1)).isTrue();
        // Of the typical value 20.32, a tenth is more than four times the noise, and a twentieth is less.
        assertThat(measure.isReliable(0.1)).isTrue();
        assertThat(measure.isReliable(0.05)).isFalse();
        assertThat(measure.isTypical(19.0)).isTrue();
        assertThat(measure.isTypical(10.0)).isFalse();
        assertThat(measure.isTypicalOrBolder(45.0))
                .as("every tenth line is bold")
                .isTrue();
        assertThat(measure.isTypicalOrBolder(10.0)).isFalse();
        assertThat(measure.isAbsent(1.0)).isTrue();
        assertThat(measure.isAbsent(8.0)).isFalse();
        assertThat(measure.isSignificantlyLower(15.0)).isTrue();
        assertThat(measure.isSignificantlyLower(19.0)).isFalse();
    }

    @Test
    void saysThatNothingStandsOutFromNoise() {
        assertThat(LineVisibilityMeasure.of(samples(1), d -> d).isReliable(1)).isFalse();
    }

    @Test
    void takesTheMedianOfEachChannel() {
        List<double[]> samples = DoubleStream.of(3, 1, 2, 50, 0)
                .mapToObj(d -> new double[] {d, -d, 7})
                .toList();
        assertThat(LineVisibilityMeasure.channelMedians(samples, s -> s)).containsExactly(2, -2, 7);
    }
}
