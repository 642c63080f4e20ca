package weltwright.app.gui.theme;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.InMemoryPreferences;

class SystemAppearanceTest {
    @Test
    void readsWhatTheSystemPrints() {
        assertThat(new SystemAppearance(List.of("echo", "'prefer-dark'"), "prefer-dark").isDark())
                .isTrue();
        assertThat(new SystemAppearance(List.of("echo", "'default'"), "prefer-dark").isDark())
                .isFalse();
    }

    @Test
    void isLightWhereTheSystemDoesNotTell() {
        assertThat(new SystemAppearance(List.of("no-such-program"), "").isDark())
                .isFalse();
        assertThat(new SystemAppearance(List.of("sleep", "60"), "").isDark()).isFalse();
    }

    @Test
    void theChoiceIsKept() {
        InMemoryPreferences preferences = new InMemoryPreferences();
        assertThat(ThemeChoice.load(preferences)).isEqualTo(ThemeChoice.SYSTEM);
        preferences.put("look", "DARK");
        assertThat(ThemeChoice.load(preferences)).isEqualTo(ThemeChoice.DARK);
        assertThat(ThemeChoice.DARK.theme()).isEqualTo(Theme.DARK);
    }
}
