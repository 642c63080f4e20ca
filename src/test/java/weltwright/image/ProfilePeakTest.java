package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bell curves whose middle is known. */
class ProfilePeakTest {
    @ParameterizedTest
    @ValueSource(doubles = {12, 12.25, 12.5, 12.9, 11.4})
    void findsTheMiddleOfABellBetweenTheSamples(double middle) {
        double[] bell = new double[25];
        Arrays.setAll(bell, k -> 80 * Math.exp(-0.5 * Math.pow((k - middle) / 2, 2)));
        assertThat(ProfilePeak.centre(bell, 12, 7)).isCloseTo(middle, within(0.01));
    }

    /** What lies beyond the window has no say. */
    @ParameterizedTest
    @ValueSource(ints = {2, 23})
    void isNotDrawnToAnotherPeak(int other) {
        double[] bell = new double[26];
        Arrays.setAll(bell, k -> 80 * Math.exp(-0.5 * Math.pow((k - 12.5) / 1.5, 2)));
        bell[other] += 300;
        assertThat(ProfilePeak.centre(bell, 12, 6)).isCloseTo(12.5, within(0.02));
    }
}
