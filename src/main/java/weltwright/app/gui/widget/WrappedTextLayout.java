package weltwright.app.gui.widget;

import java.awt.Component;
import java.awt.Container;
import net.miginfocom.swing.MigLayout;

/**
 * A MigLayout that gives wrapped text the height that it needs at the width that it gets. A text area tells its height
 * for the width that it had before, so MigLayout alone is right only the next time that something asks it to lay out:
 * what stands below the text then jumps, perhaps from under a mouse that is just being pressed.
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
        if (hasTextOfTheWrongHeight(parent)) {
            invalidateLayout(parent);
            super.layoutContainer(parent);
        }
    }

    private static boolean hasTextOfTheWrongHeight(Container parent) {
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
