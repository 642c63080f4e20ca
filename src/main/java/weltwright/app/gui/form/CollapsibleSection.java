package weltwright.app.gui.form;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Rectangle;
import javax.swing.Icon;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.widget.MnemonicText;
import weltwright.app.gui.widget.TradeTerms;

/**
 * A part of a form that collapses under its title. Collapsed, it shows a summary of its values. It stays expanded while
 * one of its fields is invalid.
 */
public final class CollapsibleSection extends JPanel {
    private final JToggleButton header;
    private final JLabel summary = new JLabel();
    private final FormPanel content;

    CollapsibleSection(MnemonicText title, FormPanel content) {
        super(new MigLayout("insets 0, fillx, hidemode 3, wrap 1, gapy 0", "[grow,fill]"));
        this.content = content;
        header = new JToggleButton(title.text(), new Arrow());
        header.setName("fold " + title.text());
        header.setMnemonic(title.mnemonic());
        header.setToolTipText(TradeTerms.explained(title.text()).orElse(null));
        header.setHorizontalAlignment(SwingConstants.LEADING);
        header.putClientProperty("JButton.buttonType", "borderless");
        header.putClientProperty("FlatLaf.style", "font: bold; margin: 3,2,3,6; toolbar.selectedBackground: null");
        header.addActionListener(e -> {
            update();
            // After the layout: scrolls to the expanded part.
            SwingUtilities.invokeLater(() -> scrollRectToVisible(new Rectangle(getSize())));
        });
        summary.setEnabled(false);
        add(header, "wmin 0");
        add(summary, "wmin 0, gapleft 20, gapbottom 4");
        add(content, "wmin 0");
        update();
    }

    /** Sets the summary that is shown while the section is collapsed. */
    public void setSummary(String text) {
        summary.setText(text);
        summary.setToolTipText(text);
        header.getAccessibleContext().setAccessibleDescription(text);
    }

    FormPanel content() {
        return content;
    }

    /** Expands the section where one of its fields is refused. */
    void expandWhereRefused() {
        if (content.refusedField().isPresent()) {
            update();
        }
    }

    private void update() {
        boolean open = header.isSelected() || content.refusedField().isPresent();
        header.setSelected(open);
        content.setVisible(open);
        summary.setVisible(!open);
        revalidate();
    }

    /** The expand and collapse icons of the look and feel's tree. */
    private static final class Arrow implements Icon {

        @Override
        public void paintIcon(Component c, Graphics g, int x, int y) {
            currentIcon(c).paintIcon(c, g, x, y);
        }

        @Override
        public int getIconWidth() {
            return UIManager.getIcon("Tree.collapsedIcon").getIconWidth();
        }

        @Override
        public int getIconHeight() {
            return UIManager.getIcon("Tree.collapsedIcon").getIconHeight();
        }

        private static Icon currentIcon(Component c) {
            boolean open = ((JToggleButton) c).isSelected();
            return UIManager.getIcon(open ? "Tree.expandedIcon" : "Tree.collapsedIcon");
        }
    }
}
