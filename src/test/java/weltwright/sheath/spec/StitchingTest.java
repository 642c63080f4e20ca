package weltwright.sheath.spec;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StitchingTest {

    /** Common practice: irons of 3 to 5 mm are used with thread of 0.8 to 1 mm, which two needles pull through. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 4, 5})
    void theHolesOfUsualIronsTakeTheUsualThread(double pitchMm) {
        assertThat(stitching(pitchMm).holeMm()).isBetween(1.0, 1.5);
    }

    /** Common practice: a row tears along its holes where they take away as much leather as they leave. */
    @ParameterizedTest
    @ValueSource(doubles = {1.5, 2, 2.7, 3, 4, 6, 12})
    void moreLeatherIsLeftBetweenHolesThanTheyTake(double pitchMm) {
        double hole = stitching(pitchMm).holeMm();
        assertThat(pitchMm - hole).isGreaterThan(hole);
    }

    private static Stitching stitching(double pitchMm) {
        return new Stitching(3, pitchMm, 2, OptionalDouble.empty());
    }
}
