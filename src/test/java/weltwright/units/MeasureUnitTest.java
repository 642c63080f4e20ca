package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static weltwright.units.MeasureUnit.INCH;
import static weltwright.units.MeasureUnit.MILLIMETRE;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
class MeasureUnitTest {
    private static final LengthField ANY = LengthField.of("length", 0, 10_000);

    @Test
    void formatsToTheDivisionThatIsNearestToTheDecimals() {
        assertThat(MILLIMETRE.format(25.4 / 8, 1)).isEqualTo("3.2 mm");
        assertThat(INCH.format(25.4 / 8, 1)).isEqualTo("1/8 in");
        assertThat(INCH.format(25.4 * 3 / 64, 0)).isEqualTo("1/16 in");
        assertThat(INCH.format(0.2, 2)).isEqualTo("0.008 in");
        assertThat(INCH.figures(25.4 * 1.5, 1)).isEqualTo("1 1/2");
        assertThat(MILLIMETRE.figures(38.1, 1)).isEqualTo("38.1");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 3, 3.175, 19, 19.05, 25.4, 101.6, 297})
    void readsItsOwnTextsToAThousandthOfAnInch(double mm) {
        for (MeasureUnit unit : MeasureUnit.values()) {
            assertThat(ANY.readMm(unit.formatExactly(mm))).isCloseTo(mm, within(0.0127));
        }
        assertThat(ANY.readMm("3/4", INCH.ofBareNumbers())).isCloseTo(19.05, within(1e-12));
        assertThat(ANY.readMm("19", MILLIMETRE.ofBareNumbers())).isEqualTo(19);
    }
}
