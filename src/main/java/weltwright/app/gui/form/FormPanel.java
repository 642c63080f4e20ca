package weltwright.app.gui.form;

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
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** A column of labelled lines, as wide as its place and as high as it needs. */
public class FormPanel extends JPanel implements Scrollable {
    /** Labels of every form and every part of it end at one line. */
    private static final int LABELS_WIDE = 104;

    private final transient Map<JComponent, JLabel> labels = new HashMap<>();
    private final transient List<ValidatedField<?>> entries = new ArrayList<>();

    public FormPanel() {
        this("14 16 16 16");
    }

    /** @param insets free space at its top, left, bottom and right */
    public FormPanel(String insets) {
        super(new WrappedTextLayout(
                "insets " + insets + ", fillx, hidemode 3, wrap 2",
                "[" + LABELS_WIDE + ":pref, shrink 0][grow,fill]",
                "[]6[]"));
    }

    public final void heading(String text) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        add(heading, "span, gaptop 10, gapbottom 2");
    }

    /** A line with its label; {@code mnemonic} is a letter of the label. */
    public final void line(String label, char mnemonic, ValidatedField<?> entry, String tip) {
        JLabel words = label(label, mnemonic, entry.field(), tip);
        entries.add(entry);
        add(words);
        add(entry.field(), "wmin 90");
        add(entry.wrong(), "span, growx, wmin 0");
    }

    /** Any other component with its label. */
    public final void line(String label, char mnemonic, JComponent component, String tip) {
        add(label(label, mnemonic, component, tip));
        component.getAccessibleContext().setAccessibleName(label);
        add(component, "growx, wmin 0");
    }

    /** Shows a line, or takes it away where it has nothing to say. */
    public final void showLine(ValidatedField<?> entry, boolean shown) {
        if (!shown && entry.isWrong()) {
            entry.revert();
        }
        showLine(entry.field(), shown);
    }

    /** The same for a line that is no entry. */
    public final void showLine(JComponent component, boolean shown) {
        Objects.requireNonNull(labels.get(component)).setVisible(shown);
        component.setVisible(shown);
    }

    /** Whether something typed on it cannot be read. */
    final boolean isWrong() {
        return entries.stream().anyMatch(ValidatedField::isWrong);
    }

    /** Lines that are seldom wanted, under a name that they fold out from. */
    public final CollapsibleSection foldOut(String name, char mnemonic, FormPanel lines) {
        CollapsibleSection foldOut = new CollapsibleSection(name, mnemonic, lines);
        add(foldOut, "span, growx, wmin 0, gaptop 2");
        return foldOut;
    }

    public final void wide(JComponent component) {
        add(component, "span, growx, wmin 0");
    }

    /** Sentences that guide; not a label of anything. */
    public final WrappedText words(String text) {
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
