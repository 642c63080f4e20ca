package weltwright.app.gui.theme;

import com.formdev.flatlaf.extras.FlatSVGIcon;
import java.awt.Image;
import java.util.List;
import java.util.stream.IntStream;
import javax.swing.AbstractButton;
import javax.swing.Icon;
import javax.swing.ImageIcon;

/** Loads the icons of windows and buttons from the files beside this class. */
public final class ToolIcons {
    private static final int[] WINDOW_SIZES = {16, 32, 48, 128};

    private ToolIcons() {}

    /**
     * Returns the icon of the program's windows in several sizes. They are drawn from
     * {@code native/icon/weltwright.svg} and kept as PNG: what reads SVG is loaded later then, with the first button
     * that needs it.
     */
    public static List<Image> windowIcons() {
        return IntStream.of(WINDOW_SIZES)
                .mapToObj(size -> new ImageIcon(ToolIcons.class.getResource("application-" + size + ".png")).getImage())
                .toList();
    }

    /** Shows an icon in place of a button's text, which goes into its tool tip and remains its accessible name. */
    public static void replaceText(AbstractButton button, String icon) {
        String text = button.getText();
        button.setIcon(icon(icon));
        button.setHideActionText(true);
        button.setText(null);
        button.getAccessibleContext().setAccessibleName(text);
        button.setToolTipText(text + ": " + button.getToolTipText());
    }

    /** Returns the icon of a button from the file {@code name.svg}; its grey follows the theme. */
    public static Icon icon(String name) {
        return new FlatSVGIcon(ToolIcons.class.getResource(name + ".svg"));
    }
}
