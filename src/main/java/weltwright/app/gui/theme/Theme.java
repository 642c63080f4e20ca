package weltwright.app.gui.theme;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.util.prefs.Preferences;

/**
 * The light and the dark theme of the window. Properties files beside this class hold what differs from FlatLaf's
 * defaults: {@code FlatLaf.properties} for both themes and one file for each.
 */
public enum Theme {
    LIGHT("Light"),
    DARK("Dark");

    private static final String KEY = "look";

    private final String label;

    Theme(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }

    /** Returns the theme that the preferences hold; by default the light one. */
    public static Theme load(Preferences preferences) {
        return DARK.name().equals(preferences.get(KEY, LIGHT.name())) ? DARK : LIGHT;
    }

    /** Installs this theme, also in the open windows, and stores it in the preferences. */
    public void select(Preferences preferences) {
        preferences.put(KEY, name());
        install();
        FlatLaf.updateUI();
    }

    /** Installs this theme for windows that are created from now on. */
    public void install() {
        FlatLaf.registerCustomDefaultsSource(Theme.class.getPackageName(), Theme.class.getClassLoader());
        if (this == DARK) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
    }
}
