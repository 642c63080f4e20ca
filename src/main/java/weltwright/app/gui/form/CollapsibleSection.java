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

/**
 * Lines of a form under a name that they fold out from. Folded in, a few words beneath the name say what they hold.
 * With something on them that cannot be read they stay folded out.
 */
public final class CollapsibleSection extends JPanel {
    private final JToggleButton head;
    private final JLabel held = new JLabel();
    private final FormPanel lines;

    CollapsibleSection(String name, char mnemonic, FormPanel lines) {
        super(new MigLayout("insets 0, fillx, hidemode 3, wrap 1, gapy 0", "[grow,fill]"));
        this.lines = lines;
        head = new JToggleButton(name, new Arrow());
        head.setName("fold " + name);
        head.setMnemonic(mnemonic);
        head.setHorizontalAlignment(SwingConstants.LEADING);
        head.putClientProperty("JButton.buttonType", "borderless");
        head.putClientProperty("FlatLaf.style", "font: bold; margin: 3,2,3,6; toolbar.selectedBackground: null");
        head.addActionListener(e -> {
            look();
            // Once it is laid out: what was folded out is to be seen.
            SwingUtilities.invokeLater(() -> scrollRectToVisible(new Rectangle(getSize())));
        });
        held.setEnabled(false);
        add(head, "wmin 0");
        add(held, "wmin 0, gapleft 20, gapbottom 4");
        add(lines, "wmin 0");
        look();
    }

    /** What the lines hold, in a few words. */
    public void say(String words) {
        held.setText(words);
        held.setToolTipText(words);
        head.getAccessibleContext().setAccessibleDescription(words);
    }

    private void look() {
        boolean open = head.isSelected() || lines.isWrong();
        head.setSelected(open);
        lines.setVisible(open);
        held.setVisible(!open);
        revalidate();
    }

    /** As a tree has it; each look brings its own. */
    private static final class Arrow implements Icon {

        @Override
        public void paintIcon(Component c, Graphics g, int x, int y) {
            now(c).paintIcon(c, g, x, y);
        }

        @Override
        public int getIconWidth() {
            return UIManager.getIcon("Tree.collapsedIcon").getIconWidth();
        }

        @Override
        public int getIconHeight() {
            return UIManager.getIcon("Tree.collapsedIcon").getIconHeight();
        }

        private static Icon now(Component c) {
            boolean open = ((JToggleButton) c).isSelected();
            return UIManager.getIcon(open ? "Tree.expandedIcon" : "Tree.collapsedIcon");
        }
    }
}
