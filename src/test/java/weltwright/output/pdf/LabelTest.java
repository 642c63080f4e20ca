package weltwright.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabelTest {
    /** Readable from the bottom or from the right of the page: ISO 129-1, from memory. */
    @ParameterizedTest
    @CsvSource({"0, 0", "45, 45", "90, 90", "95, 95", "132, -48", "-44, -44", "-90, 90", "180, 0", "-135, 45", "200, 20"
    })
    void isNeverUpsideDown(double degrees, double readable) {
        assertThat(Math.toDegrees(Label.readable(Math.toRadians(degrees)))).isBetween(readable - 1e-9, readable + 1e-9);
    }
}
