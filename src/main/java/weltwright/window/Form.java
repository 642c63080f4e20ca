package weltwright.window;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.HashMap;
import java.util.Map;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;
import net.miginfocom.swing.MigLayout;

/** A column of labelled lines, as wide as its place and as high as it needs. */
class Form extends JPanel implements Scrollable {
    private final transient Map<Entry<?>, JLabel> labels = new HashMap<>();

    Form() {
        super(new MigLayout("insets 14 16 16 16, fillx, hidemode 3, wrap 2", "[][grow,fill]", "[]6[]"));
    }

    final void heading(String text) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        add(heading, "span, gaptop 10, gapbottom 2");
    }

    /** A line with its label; {@code mnemonic} is a letter of the label. */
    final void line(String label, char mnemonic, Entry<?> entry, String tip) {
        JLabel words = label(label, mnemonic, entry.field(), tip);
        labels.put(entry, words);
        add(words);
        add(entry.field(), "wmin 90");
        add(entry.wrong(), "span, growx, wmin 0");
    }

    /** Any other component with its label. */
    final void line(String label, char mnemonic, JComponent component, String tip) {
        add(label(label, mnemonic, component, tip));
        component.getAccessibleContext().setAccessibleName(label);
        add(component, "growx, wmin 0");
    }

    /** Shows a line, or takes it away where it has nothing to say. */
    final void showLine(Entry<?> entry, boolean shown) {
        labels.get(entry).setVisible(shown);
        entry.field().setVisible(shown);
    }

    final void wide(JComponent component) {
        add(component, "span, growx, wmin 0");
    }

    /** Sentences that guide; not a label of anything. */
    final WrappedText words(String text) {
        WrappedText words = new WrappedText(Look::faint);
        words.say(text);
        wide(words);
        return words;
    }

    private static JLabel label(String text, char mnemonic, JComponent component, String tip) {
        JLabel label = new JLabel(text);
        label.setLabelFor(component);
        if (mnemonic != 0) {
            label.setDisplayedMnemonic(mnemonic);
        }
        label.setToolTipText(tip);
        component.setToolTipText(tip);
        return label;
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return getFontMetrics(getFont()).getHeight();
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return orientation == SwingConstants.VERTICAL ? visible.height : visible.width;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return false;
    }
}
