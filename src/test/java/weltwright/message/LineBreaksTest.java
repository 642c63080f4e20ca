package weltwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * A space separates a number from its unit (SI Brochure, 9th edition, 5.4.3; from memory). That both stay on one line
 * is common practice.
 */
class LineBreaksTest {
    @Test
    void keepsANumberWithItsUnit() {
        assertThat(LineBreaks.parts("Leather of 3.0 mm, 6 h 15 min, 80 % of 3/4 in"))
                .containsExactly("Leather", "of", "3.0 mm,", "6 h", "15 min,", "80 %", "of", "3/4 in");
    }

    @Test
    void breaksWhereWordsOnlyBeginLikeUnits() {
        assertThat(LineBreaks.parts("2 holes mm 4 inner m")).containsExactly("2", "holes", "mm", "4", "inner", "m");
    }

    @Test
    void movesABreakBeforeTheNumber() {
        String text = "Leder von 3,0 mm";
        assertThat(LineBreaks.upTo(text.indexOf("mm"), text)).isEqualTo(text.indexOf("3,0"));
        assertThat(LineBreaks.upTo(text.indexOf("3,0"), text)).isEqualTo(text.indexOf("3,0"));
    }

    @Test
    void leavesABreakInALoneMeasure() {
        assertThat(LineBreaks.upTo(4, "3,0 mm")).isEqualTo(4);
    }
}
