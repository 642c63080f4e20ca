package weltwright.app.gui.theme;

import java.util.Arrays;
import java.util.Locale;
import java.util.prefs.Preferences;
import weltwright.message.Messages;

/** The user's choice of a theme, kept in the preferences: that of the system, or always the same. */
public enum ThemeChoice {
    SYSTEM,
    LIGHT,
    DARK;

    private static final Messages MESSAGES = Messages.of(ThemeChoice.class);
    private static final String KEY = "look";

    public String label() {
        return MESSAGES.text("choice." + name().toLowerCase(Locale.ROOT));
    }

    /** Returns the choice that the preferences hold; by default that of the system. */
    public static ThemeChoice load(Preferences preferences) {
        String name = preferences.get(KEY, SYSTEM.name());
        return Arrays.stream(values())
                .filter(choice -> choice.name().equals(name))
                .findFirst()
                .orElse(SYSTEM);
    }

    /** Returns the theme of this choice; asks the system where it decides, which takes some hundredths of a second. */
    public Theme theme() {
        return switch (this) {
            case LIGHT -> Theme.LIGHT;
            case DARK -> Theme.DARK;
            case SYSTEM -> SystemAppearance.standard().isDark() ? Theme.DARK : Theme.LIGHT;
        };
    }

    /** Stores this choice and installs its theme, also in the open windows. */
    public void select(Preferences preferences) {
        preferences.put(KEY, name());
        theme().installInOpenWindows();
    }
}
