package weltwright.app.gui.theme;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.Toolkit;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.InputMap;
import javax.swing.KeyStroke;
import javax.swing.UIManager;

/**
 * The light and the dark theme of the window. Properties files beside this class hold what differs from FlatLaf's
 * defaults: {@code FlatLaf.properties} for both themes and one file for each.
 */
public enum Theme {
    LIGHT,
    DARK;

    private static final List<String> TEXT_COMPONENTS =
            List.of("TextField", "FormattedTextField", "PasswordField", "TextArea", "EditorPane", "TextPane");

    /** Installs this theme, also in the open windows. */
    public void installInOpenWindows() {
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
        freeKeyOfOrientation();
    }

    /** Text fields take Ctrl Shift O to flip their direction of writing; the window has another use for it. */
    private static void freeKeyOfOrientation() {
        KeyStroke key = KeyStroke.getKeyStroke(
                KeyEvent.VK_O, Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx() | InputEvent.SHIFT_DOWN_MASK);
        for (String component : TEXT_COMPONENTS) {
            ((InputMap) UIManager.get(component + ".focusInputMap")).remove(key);
        }
    }
}
