package weltwright.app.gui.widget;

import java.awt.Component;
import java.awt.Container;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;

/**
 * A MigLayout that lays out {@link WrappedText} and {@link WrappingRow} at the height that they need for their new
 * width. The preferred height of a text area is that for its present width; MigLayout alone would correct it only at
 * the next layout, and all components below would then move, perhaps between a press and a release of the mouse.
 *
 * <p>Where that may make the container itself higher or lower than its parent was told before, the parent lays it out
 * again. Else a container that was laid out narrow once, such as before its window had its size, would keep the height
 * for that width.
 */
public final class WrappedTextLayout extends MigLayout {

    private int toldWidthPx = -1;

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
            tellParent(parent);
        }
    }

    /** Has the container laid out again, once for each width, since it may get another height then. */
    private void tellParent(Container container) {
        if (container.getWidth() != toldWidthPx && container instanceof JComponent component) {
            toldWidthPx = container.getWidth();
            // Not now: the parent is being laid out, and would count as valid afterwards.
            SwingUtilities.invokeLater(component::revalidate);
        }
    }

    private static boolean hasTextOfWrongHeight(Container parent) {
        for (Component child : parent.getComponents()) {
            if ((child instanceof WrappedText || child instanceof WrappingRow)
                    && child.isVisible()
                    && child.getHeight() != child.getPreferredSize().height) {
                return true;
            }
        }
        return false;
    }
}
