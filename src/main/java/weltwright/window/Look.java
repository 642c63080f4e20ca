package weltwright.window;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.Color;
import java.util.prefs.Preferences;
import javax.swing.UIManager;

/** Light or dark, as the user last chose, and the colours of the drawings in each. */
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

    /** Puts this look on every open window and on those to come, and remembers it. */
    void choose(Preferences memory) {
        memory.put(KEY, name());
        wear();
        FlatLaf.updateUI();
    }

    /** Puts it on the windows to come. */
    void wear() {
        if (this == DARK) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
        UIManager.put("TitlePane.showIcon", true);
        UIManager.put("ScrollBar.showButtons", false);
        UIManager.put("Component.hideMnemonics", false);
    }

    static Color table() {
        return dark() ? new Color(0x2b2d30) : new Color(0xe9e7e2);
    }

    static Color leather() {
        return dark() ? new Color(0x8a6a48) : new Color(0xe3c29b);
    }

    /** Cut across, a little darker than the leather round it. */
    static Color welt() {
        return dark() ? new Color(0x6b4f33) : new Color(0xc99c6c);
    }

    static Color steel() {
        return dark() ? new Color(0x8795a3) : new Color(0xb9c4ce);
    }

    static Color thread() {
        return dark() ? new Color(0xf6e9cf) : new Color(0x5c2e14);
    }

    /** Inside a sheath, where nothing is. */
    static Color air() {
        return dark() ? new Color(0x1f2022) : new Color(0xfbfaf7);
    }

    static Color cut() {
        return dark() ? new Color(0xf3e6d4) : new Color(0x4a2f17);
    }

    static Color hole() {
        return dark() ? new Color(0x17120d) : new Color(0x2a1a0c);
    }

    static Color line() {
        return dark() ? new Color(0xd9c3a6) : new Color(0x7b5a38);
    }

    static Color knife() {
        return dark() ? new Color(0x9fc5e8) : new Color(0x2f5f8f);
    }

    static Color text() {
        return dark() ? new Color(0xe6e6e6) : new Color(0x26221d);
    }

    static Color faint() {
        return dark() ? new Color(0xb0b3b8) : new Color(0x5d5850);
    }

    static Color wrong() {
        return dark() ? new Color(0xff8f85) : new Color(0xb3261e);
    }

    static Color right() {
        return dark() ? new Color(0x6fc693) : new Color(0x2e7d4f);
    }

    /** What the maker should mind. */
    static Color loose() {
        return dark() ? new Color(0xe3b341) : new Color(0x855b00);
    }

    static Color notice() {
        return dark() ? new Color(0x4d3f1e) : new Color(0xfff1c9);
    }

    private static boolean dark() {
        return FlatLaf.isLafDark();
    }
}
