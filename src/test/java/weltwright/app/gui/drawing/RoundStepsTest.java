package weltwright.app.gui.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RoundStepsTest {

    @Test
    void stepsAreOneTwoOrFiveTimesAPowerOfTen() {
        assertThat(RoundSteps.atLeast(0.3)).isCloseTo(0.5, within(1e-12));
        assertThat(RoundSteps.atLeast(2)).isCloseTo(2, within(1e-12));
        assertThat(RoundSteps.atLeast(2.1)).isCloseTo(5, within(1e-12));
        assertThat(RoundSteps.atLeast(51)).isCloseTo(100, within(1e-12));
    }

    @Test
    void valuesHaveTheDecimalsOfTheirStep() {
        RoundSteps steps = RoundSteps.of(1.1, 6);
        assertThat(steps.values()).hasSize(6).endsWith(1.0);
        assertThat(steps.format(0.4)).isEqualTo("0.4");
        assertThat(RoundSteps.of(200, 5).format(100)).isEqualTo("100");
    }
}
