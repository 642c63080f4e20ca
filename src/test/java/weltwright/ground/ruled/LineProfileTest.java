package weltwright.ground.ruled;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Profiles of lines blurred to a bell, whose middle and contrast are known; the area of a bell tells its width. */
class LineProfileTest {
    private static final double STEP_PX = 0.5;
    private static final double SIGMA_PX = 1;
    private static final double WIDTH_PX = 2.5;

    private static double[] profile(DoubleUnaryOperator levelAtPx) {
        double[] profile = new double[41];
        Arrays.setAll(profile, k -> levelAtPx.applyAsDouble((k - 20) * STEP_PX));
        return profile;
    }

    private static double bell(double px) {
        return Math.exp(-0.5 * Math.pow(px / SIGMA_PX, 2));
    }

    @ParameterizedTest
    @CsvSource({"0, 40, 1", "0.3, 40, 1", "-0.7, -25, -1", "1.1, -60, -1"})
    void measuresALineOnEvenGround(double middle, double contrast, int sign) {
        LineProfile line = LineProfile.in(profile(px -> 120 + contrast * bell(px - middle)), STEP_PX, sign, WIDTH_PX)
                .orElseThrow();
        assertThat(line.offsetPx()).isCloseTo(middle, within(0.01));
        // The highest sample lies up to a quarter of a pixel beside the top.
        assertThat(line.contrast()).isCloseTo(Math.abs(contrast), within(0.04 * Math.abs(contrast)));
        assertThat(line.widthPx()).isCloseTo(Math.sqrt(2 * Math.PI) * SIGMA_PX, within(0.15));
    }

    @Test
    void isNotMisledByLightThatFallsOff() {
        LineProfile line = LineProfile.in(profile(px -> 120 + 0.6 * px - 40 * bell(px - 0.4)), STEP_PX, -1, WIDTH_PX)
                .orElseThrow();
        assertThat(line.offsetPx()).isCloseTo(0.4, within(0.03));
    }

    @Test
    void findsNoneWhereThereIsNone() {
        assertThat(LineProfile.in(profile(px -> 120), STEP_PX, -1, WIDTH_PX))
                .as("nothing")
                .isEmpty();
        assertThat(LineProfile.in(profile(px -> px < 0 ? 60 : 120), STEP_PX, -1, WIDTH_PX))
                .as("an edge")
                .isEmpty();
        assertThat(LineProfile.in(profile(px -> 120 + 40 * bell(px)), STEP_PX, -1, WIDTH_PX))
                .as("a light line among dark ones")
                .isEmpty();
    }
}
