package weltwright.app.gui.widget;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Insets;
import javax.swing.BorderFactory;
import javax.swing.JPanel;

/**
 * A row of controls that goes on in further rows where its width is too small, flush with its sides. As of a wrapped
 * text, its preferred height is that for its present width; {@link WrappedTextLayout} lays it out at the height for its
 * new one.
 */
public final class WrappingRow extends JPanel {
    private final int gapPx;

    /** @param gapPx between the controls, above and below them, not scaled */
    public WrappingRow(int gapPx) {
        super(new FlowLayout(FlowLayout.LEADING, UIScale.scale(gapPx), UIScale.scale(gapPx)));
        this.gapPx = UIScale.scale(gapPx);
        setBorder(BorderFactory.createEmptyBorder(0, -this.gapPx, 0, -this.gapPx)); // against FlowLayout's own gaps
    }

    @Override
    public Dimension getPreferredSize() {
        Dimension inOneRow = super.getPreferredSize();
        return getWidth() == 0 || getWidth() >= inOneRow.width
                ? inOneRow
                : new Dimension(inOneRow.width, heightAtWidth());
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(0, getPreferredSize().height);
    }

    /** Returns the height that {@link FlowLayout} needs for the present width. */
    private int heightAtWidth() {
        Insets insets = getInsets();
        int width = getWidth() - insets.left - insets.right - 2 * gapPx;
        int height = insets.top + insets.bottom + gapPx;
        int used = 0;
        int row = 0;
        for (Component control : getComponents()) {
            if (control.isVisible()) {
                Dimension size = control.getPreferredSize();
                if (used > 0 && used + gapPx + size.width > width) {
                    height += row + gapPx;
                    used = 0;
                    row = 0;
                }
                used += (used > 0 ? gapPx : 0) + size.width;
                row = Math.max(row, size.height);
            }
        }
        return height + row + gapPx;
    }
}
