package weltwright.app.gui.theme;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.util.prefs.Preferences;

/**
 * The light or the dark theme, as the user last chose. What a theme sets apart from FlatLaf's own defaults stands in
 * the properties files beside this class: {@code FlatLaf.properties} for both, one more for each.
 */
public enum Theme {
    LIGHT("Light"),
    DARK("Dark");

    private static final String KEY = "look";

    private final String words;

    Theme(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public static Theme chosen(Preferences memory) {
        return DARK.name().equals(memory.get(KEY, LIGHT.name())) ? DARK : LIGHT;
    }

    /** Applies this theme to all windows that are open or will be opened, and stores the choice. */
    public void choose(Preferences memory) {
        memory.put(KEY, name());
        wear();
        FlatLaf.updateUI();
    }

    /** Applies this theme to windows that will be opened. */
    public void wear() {
        FlatLaf.registerCustomDefaultsSource(Theme.class.getPackageName(), Theme.class.getClassLoader());
        if (this == DARK) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
    }
}
