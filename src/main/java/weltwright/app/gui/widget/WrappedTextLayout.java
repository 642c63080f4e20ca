package weltwright.app.gui.widget;

import java.awt.Component;
import java.awt.Container;
import net.miginfocom.swing.MigLayout;

/**
 * A MigLayout that lays out {@link WrappedText} at the height that it needs for its new width. The preferred height of
 * a text area is that for its present width; MigLayout alone would correct it only at the next layout, and all
 * components below would then move, perhaps between a press and a release of the mouse.
 */
public final class WrappedTextLayout extends MigLayout {

    public WrappedTextLayout(String layout, String columns) {
        super(layout, columns);
    }

    public WrappedTextLayout(String layout, String columns, String rows) {
        super(layout, columns, rows);
    }

    @Override
    public void layoutContainer(Container parent) {
        super.layoutContainer(parent);
        if (hasTextOfWrongHeight(parent)) {
            invalidateLayout(parent);
            super.layoutContainer(parent);
        }
    }

    private static boolean hasTextOfWrongHeight(Container parent) {
        for (Component child : parent.getComponents()) {
            if (child instanceof WrappedText
                    && child.isVisible()
                    && child.getHeight() != child.getPreferredSize().height) {
                return true;
            }
        }
        return false;
    }
}
