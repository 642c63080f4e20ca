package weltwright.window;

import com.formdev.flatlaf.extras.FlatSVGIcon;
import com.formdev.flatlaf.extras.FlatSVGUtils;
import java.awt.Image;
import java.util.List;
import javax.swing.Icon;

/** The icons of buttons and windows, from SVG files beside this class. Those of buttons take the grey of the theme. */
final class Icons {
    private Icons() {}

    /** The icon of the program's windows, in the sizes that desktops ask for. */
    static List<Image> ofWindow() {
        return FlatSVGUtils.createWindowIconImages(Icons.class.getResource("application.svg"));
    }

    static Icon of(String name) {
        return new FlatSVGIcon(Icons.class.getResource(name + ".svg"));
    }
}
