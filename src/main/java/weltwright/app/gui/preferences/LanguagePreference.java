package weltwright.app.gui.preferences;

import java.util.Optional;
import java.util.prefs.Preferences;
import weltwright.message.Language;

/** The user's choice of a language, kept in the preferences. It is in force from the next start of the program on. */
public final class LanguagePreference {
    private static final String KEY = "language";

    private LanguagePreference() {}

    /** Returns the chosen language; empty for that of the system. */
    public static Optional<Language> load(Preferences preferences) {
        return Language.of(preferences.get(KEY, ""));
    }

    static void store(Preferences preferences, Optional<Language> language) {
        preferences.put(KEY, language.map(Language::tag).orElse(""));
    }
}
