package weltwright.window;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;

/** A column of labelled lines, as wide as its place and as high as it needs. */
class Form extends JPanel implements Scrollable {
    /** Labels of every form and every part of it end at one line. */
    private static final int LABELS_WIDE = 104;

    private final transient Map<JComponent, JLabel> labels = new HashMap<>();
    private final transient List<Entry<?>> entries = new ArrayList<>();

    Form() {
        this("14 16 16 16");
    }

    /** @param insets free space at its top, left, bottom and right */
    Form(String insets) {
        super(new WrapLayout(
                "insets " + insets + ", fillx, hidemode 3, wrap 2",
                "[" + LABELS_WIDE + ":pref, shrink 0][grow,fill]",
                "[]6[]"));
    }

    final void heading(String text) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        add(heading, "span, gaptop 10, gapbottom 2");
    }

    /** A line with its label; {@code mnemonic} is a letter of the label. */
    final void line(String label, char mnemonic, Entry<?> entry, String tip) {
        JLabel words = label(label, mnemonic, entry.field(), tip);
        entries.add(entry);
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
        if (!shown && entry.isWrong()) {
            entry.revert();
        }
        showLine(entry.field(), shown);
    }

    /** The same for a line that is no entry. */
    final void showLine(JComponent component, boolean shown) {
        Objects.requireNonNull(labels.get(component)).setVisible(shown);
        component.setVisible(shown);
    }

    /** Whether something typed on it cannot be read. */
    final boolean isWrong() {
        return entries.stream().anyMatch(Entry::isWrong);
    }

    /** Lines that are seldom wanted, under a name that they fold out from. */
    final FoldOut foldOut(String name, char mnemonic, Form lines) {
        FoldOut foldOut = new FoldOut(name, mnemonic, lines);
        add(foldOut, "span, growx, wmin 0, gaptop 2");
        return foldOut;
    }

    final void wide(JComponent component) {
        add(component, "span, growx, wmin 0");
    }

    /** Sentences that guide; not a label of anything. */
    final WrappedText words(String text) {
        WrappedText words = new WrappedText(ThemeColors::secondaryText);
        words.say(text);
        wide(words);
        return words;
    }

    private JLabel label(String text, char mnemonic, JComponent component, String tip) {
        JLabel label = new JLabel(text);
        labels.put(component, label);
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
