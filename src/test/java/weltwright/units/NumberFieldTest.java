package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

class NumberFieldTest {
    private static final NumberField FOCAL = NumberField.of("focal length", 5, 2000);
    private static final NumberField LAYERS = NumberField.count("number of layers", 1, 6);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"26 | 26", " 26.5 | 26.5", "26,5 | 26.5", "5 | 5", "2000 | 2000", "٢٦٫٥ | 26.5"})
    void readsNumbers(String typed, double number) {
        assertThat(FOCAL.read(typed)).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "wide", "NaN", "Infinity", "1e2", "26mm", "1/2", "-26", "0", "2001", "1,234.5"})
    void refusesAllElseAndNamesIt(String typed) {
        assertThatThrownBy(() -> FOCAL.read(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("focal length")
                .hasMessageContaining('"' + typed + '"')
                .hasMessageEndingWith("Give a number from 5 to 2000.");
    }

    @Test
    void countsInWholeNumbers() {
        assertThat(LAYERS.readCount("3")).isEqualTo(3);
        for (String typed : new String[] {"2.5", "0", "7"}) {
            assertThatThrownBy(() -> LAYERS.readCount(typed))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageEndingWith("Give a whole number from 1 to 6.");
        }
    }

    @Test
    void refusesNumbersFromElsewhereThatAreOutOfBounds() {
        assertThat(FOCAL.checked(26)).isEqualTo(26);
        assertThatThrownBy(() -> FOCAL.checked(Double.NaN)).isInstanceOf(UserFacingException.class);
        assertThatThrownBy(() -> LAYERS.checked(9)).isInstanceOf(UserFacingException.class);
    }
}
