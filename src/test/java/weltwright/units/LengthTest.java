package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthTest {
    /** The inch fractions are those of any drill table: 3.175 mm is 1/8 in, 0.3969 mm is 1/64 in. */
    @ParameterizedTest
    @CsvSource({
        "0, 0 mm, 0 in",
        "3.175, 3.18 mm, 1/8 in",
        "0.396875, 0.4 mm, 1/64 in",
        "9.525, 9.53 mm, 3/8 in",
        "34.925, 34.93 mm, 1 3/8 in",
        "25.4, 25.4 mm, 1 in",
        "100, 100 mm, 3 15/16 in",
        "25.3, 25.3 mm, 1 in",
        "0.1, 0.1 mm, 0 in",
        "-12.7, -12.7 mm, -1/2 in",
        "-0.001, 0 mm, 0 in"
    })
    void isShownAsMakersReadIt(double mm, String inMillimetres, String inInches) {
        assertThat(new Length(mm).inMillimetres()).isEqualTo(inMillimetres);
        assertThat(new Length(mm).inInches()).isEqualTo(inInches);
    }

    /** By hand: 151.3 mm are 5.957 in, and 12 mm are 7.56 sixteenths. */
    @ParameterizedTest
    @CsvSource({"151.3, 5 15/16 in", "12, 1/2 in", "25.4, 1 in", "108.6, 4 1/4 in", "1.5, 1/16 in"})
    void aFinishedSheathIsMeasuredInSixteenths(double mm, String inInches) {
        assertThat(new Length(mm).inSixteenths()).isEqualTo(inInches);
    }

    @Property
    void fractionsAreInLowestTerms(@ForAll @DoubleRange(min = 0, max = 3000) double mm) {
        String shown = new Length(mm).inInches().replace(" in", "");
        if (shown.contains("/")) {
            String[] parts = shown.substring(shown.indexOf(' ') + 1).split("/");
            assertThat(Integer.parseInt(parts[0]) % 2).isOne();
            assertThat(64 % Integer.parseInt(parts[1])).isZero();
        }
    }
}
