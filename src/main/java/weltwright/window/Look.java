package weltwright.window;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.util.prefs.Preferences;

/**
 * The light or the dark theme, as the user last chose. What a theme sets apart from FlatLaf's own defaults stands in
 * the properties files beside this class: {@code FlatLaf.properties} for both, one more for each.
 */
enum Look {
    LIGHT("Light"),
    DARK("Dark");

    private static final String KEY = "look";

    private final String words;

    Look(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    static Look chosen(Preferences memory) {
        return DARK.name().equals(memory.get(KEY, LIGHT.name())) ? DARK : LIGHT;
    }

    /** Applies this theme to all windows that are open or will be opened, and stores the choice. */
    void choose(Preferences memory) {
        memory.put(KEY, name());
        wear();
        FlatLaf.updateUI();
    }

    /** Applies this theme to windows that will be opened. */
    void wear() {
        FlatLaf.registerCustomDefaultsSource(Look.class.getPackageName(), Look.class.getClassLoader());
        if (this == DARK) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
    }
}
