package weltwright.app.gui.widget;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TradeTermsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "The welts are skived|Welt: the strip",
                "The welts are skived|Skive: to pare",
                "Stitches to the side|Stitch: thread",
                "The guard’s thickness|Guard: what"
            })
    void explainsWordsInTheirForms(String text, String explanation) {
        assertThat(TradeTerms.explained(text))
                .hasValueSatisfying(tip -> assertThat(tip).contains(explanation));
    }

    @ParameterizedTest
    @CsvSource({"Leather", "Grinding wheels", "A wounded tailor"})
    void leavesOtherWordsAlone(String text) {
        assertThat(TradeTerms.explained(text)).isEmpty();
    }
}
