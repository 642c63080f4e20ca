package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;

class TextFieldTest {
    private static final TextField NAME = TextField.singleLine("customer", 10);
    private static final TextField NOTES = TextField.multiline("notes", 20);

    @Test
    void keepsWhatPeopleWrite() {
        assertThat(NAME.read("Łu 李🔪")).isEqualTo("Łu 李🔪");
        assertThat(NOTES.read("one\ttwo\r\nthree\rfour")).isEqualTo("one\ttwo\nthree\nfour");
    }

    @Test
    void leavesControlsAndHalvesOfCharactersOut() {
        assertThat(NAME.read("a\u0000b\u0007c\u001Bd\uD83De\u0085f")).isEqualTo("abcde f");
        assertThat(NAME.read("a\nb\tc")).isEqualTo("a b c");
    }

    @Test
    void refusesMoreThanItHoldsAndSaysHowMuch() {
        assertThat(NAME.read("🔪".repeat(10))).isEqualTo("🔪".repeat(10));
        assertThatThrownBy(() -> NAME.read("x".repeat(11)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("customer")
                .hasMessageContaining("11")
                .hasMessageContaining("10");
    }

    @Property
    void whatIsCleanStaysAsItIs(@ForAll String any) {
        String once = NOTES.clean(any);
        assertThat(NOTES.clean(once)).isEqualTo(once);
        assertThat(once.codePoints()).noneMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t');
    }
}
