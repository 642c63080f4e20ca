package weltwright.app.gui.form;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.MnemonicText;
import weltwright.app.gui.widget.TradeTerms;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.units.MeasureUnit;

/** A form of labelled rows in two columns, as wide as the viewport that it scrolls in. */
public class FormPanel extends JPanel implements Scrollable {
    /** Least width of labels in px, so that the columns of all forms and sections align; chosen by eye. */
    private static final int LABEL_WIDTH = 104;

    private final transient Map<JComponent, JLabel> labels = new HashMap<>();
    private final transient List<ValidatedField<?>> fields = new ArrayList<>();
    private final transient List<CollapsibleSection> sections = new ArrayList<>();
    private transient Runnable refusalListener = () -> {};
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    public FormPanel() {
        this("14 16 16 16");
    }

    /** @param insets at top, left, bottom and right, as MigLayout reads them */
    public FormPanel(String insets) {
        super(new WrappedTextLayout(
                "insets " + insets + ", fillx, hidemode 3, wrap 2",
                "[" + LABEL_WIDTH + ":pref, shrink 0][grow,fill]",
                "[]6[]"));
    }

    public final void addHeading(String text) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        add(heading, "span, gaptop 10, gapbottom 2");
    }

    /**
     * Adds a row with a field, and its error text beneath.
     *
     * @param label see {@link MnemonicText}
     */
    public final void addRow(String label, ValidatedField<?> field, String toolTip) {
        fields.add(field);
        field.onRefusal(() -> refusalListener.run());
        add(createLabel(MnemonicText.of(label), field.textField(), toolTip));
        add(field.textField(), "wmin 90");
        add(field.errorText(), "span, growx, wmin 0");
    }

    /**
     * Adds a row with any component.
     *
     * @param label see {@link MnemonicText}
     */
    public final void addRow(String label, JComponent component, String toolTip) {
        add(createLabel(MnemonicText.of(label), component, toolTip));
        add(component, "growx, wmin 0");
    }

    /** Adds a choice among pictures under its label, over both columns. */
    public final void addPictures(String label, PictureChoice<?> choice, String toolTip) {
        add(createLabel(MnemonicText.of(label), choice, toolTip), "span");
        choice.getAccessibleContext().setAccessibleDescription(toolTip);
        add(choice, "span, growx, wmin 0, gapbottom 4");
    }

    /** Shows or hides the row of a field; an invalid text in a field that is hidden is reverted. */
    public final void setRowVisible(ValidatedField<?> field, boolean visible) {
        if (!visible && field.isRefused()) {
            field.revert();
        }
        setRowVisible(field.textField(), visible);
    }

    /** Shows or hides the row of a component. */
    public final void setRowVisible(JComponent component, boolean visible) {
        Objects.requireNonNull(labels.get(component)).setVisible(visible);
        component.setVisible(visible);
    }

    /** Returns the first field whose text is refused, here or in a section; empty where there is none. */
    public final Optional<ValidatedField<?>> refusedField() {
        return Stream.concat(
                        fields.stream().filter(ValidatedField::isRefused),
                        sections.stream().flatMap(section -> section.content().refusedField().stream()))
                .findFirst();
    }

    /** Sets the listener that is called whenever a text was refused, here or in a section, and when that is over. */
    public final void onRefusal(Runnable listener) {
        refusalListener = listener;
        sections.forEach(section -> section.content().onRefusal(listener));
    }

    /** Shows a refused field, in a section too, and moves the focus to it. */
    public final void showRefusedField() {
        sections.forEach(CollapsibleSection::expandWhereRefused);
        refusedField().ifPresent(field -> field.textField().requestFocusInWindow());
    }

    /** Discards what was typed and not committed, such as when another job is opened. */
    public final void discardUncommitted() {
        fields.forEach(ValidatedField::discardUncommitted);
        sections.forEach(section -> section.content().discardUncommitted());
    }

    /** Sets the unit in which lengths are shown and bare numbers are read, here and in the sections. */
    public void setUnit(MeasureUnit newUnit) {
        unit = newUnit;
        fields.forEach(field -> field.setUnit(newUnit));
        sections.forEach(section -> section.content().setUnit(newUnit));
    }

    /** Returns the unit in which lengths are shown. */
    protected final MeasureUnit unit() {
        return unit;
    }

    /**
     * Adds a collapsible section.
     *
     * @param title see {@link MnemonicText}
     */
    public final CollapsibleSection addSection(String title, FormPanel content) {
        CollapsibleSection section = new CollapsibleSection(MnemonicText.of(title), content);
        sections.add(section);
        add(section, "span, growx, wmin 0, gaptop 2");
        return section;
    }

    public final void addFullWidth(JComponent component) {
        add(component, "span, growx, wmin 0");
    }

    /** Adds a wrapped text over both columns. */
    public final WrappedText addText(String text) {
        WrappedText wrapped = new WrappedText(ThemeColors::secondaryText);
        wrapped.showText(text);
        addFullWidth(wrapped);
        return wrapped;
    }

    private JLabel createLabel(MnemonicText text, JComponent component, String toolTip) {
        JLabel label = text.label();
        labels.put(component, label);
        label.setLabelFor(component);
        component.getAccessibleContext().setAccessibleName(text.text());
        label.setToolTipText(TradeTerms.withTerms(text.text(), toolTip));
        component.setToolTipText(toolTip);
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
