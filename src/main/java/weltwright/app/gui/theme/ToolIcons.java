package weltwright.app.gui.theme;

import com.formdev.flatlaf.extras.FlatSVGIcon;
import com.formdev.flatlaf.extras.FlatSVGUtils;
import java.awt.Image;
import java.util.List;
import javax.swing.Icon;

/** Loads the icons of windows and buttons from the SVG files beside this class. */
public final class ToolIcons {
    private ToolIcons() {}

    /** Returns the icon of the program's windows in several sizes. */
    public static List<Image> windowIcons() {
        return FlatSVGUtils.createWindowIconImages(ToolIcons.class.getResource("application.svg"));
    }

    /** Returns the icon of a button from the file {@code name.svg}; its grey follows the theme. */
    public static Icon icon(String name) {
        return new FlatSVGIcon(ToolIcons.class.getResource(name + ".svg"));
    }
}
