package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.units.PrintScale;

class LengthPairTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            99.7mm,99.9mm     | 0.997 | 0.999
            99.7, 99.9        | 0.997 | 0.999
            99,7mm,99,9mm     | 0.997 | 0.999
            99,7,99,9         | 0.997 | 0.999
            100,99,9          | 1     | 0.999
            9.97cm,9.99cm     | 0.997 | 0.999
            3 15/16 in,4 in   | 1.000125 | 1.016
            """)
    void readsTwoLengthsWithAPointOrAComma(String typed, double across, double down) {
        PrintScale scale = LengthPair.SHEET_BARS.readScale(typed);
        assertThat(scale.x()).isCloseTo(across, within(1e-12));
        assertThat(scale.y()).isCloseTo(down, within(1e-12));
    }
}
