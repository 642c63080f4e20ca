package weltwright.app.gui.theme;

import com.formdev.flatlaf.extras.FlatSVGIcon;
import com.formdev.flatlaf.extras.FlatSVGUtils;
import java.awt.Image;
import java.util.List;
import javax.swing.Icon;

/** The icons of buttons and windows, from SVG files beside this class. Those of buttons take the grey of the theme. */
public final class ToolIcons {
    private ToolIcons() {}

    /** The icon of the program's windows, in the sizes that desktops ask for. */
    public static List<Image> ofWindow() {
        return FlatSVGUtils.createWindowIconImages(ToolIcons.class.getResource("application.svg"));
    }

    public static Icon of(String name) {
        return new FlatSVGIcon(ToolIcons.class.getResource(name + ".svg"));
    }
}
