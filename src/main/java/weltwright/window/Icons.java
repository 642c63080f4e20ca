package weltwright.window;

import com.formdev.flatlaf.extras.FlatSVGIcon;
import javax.swing.Icon;

/** The signs on buttons: drawn as SVG, grey as the look has it. */
final class Icons {
    private static final String FOLDER = "weltwright/window/";

    private Icons() {}

    static Icon of(String name) {
        return new FlatSVGIcon(FOLDER + name + ".svg");
    }
}
