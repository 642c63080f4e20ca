package weltwright.app.gui.form;

import java.awt.BorderLayout;
import java.awt.event.ActionEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JMenuItem;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;
import weltwright.units.FieldWords;
import weltwright.units.MeasureUnit;

/**
 * A text field with a typed value. The text is committed at Enter, at the loss of the focus and, if so chosen, shortly
 * after typing stops. A text that cannot be read leaves the value as it was, is refused with an error text at Enter or
 * at the loss of the focus, and is reverted by Escape. Where the text differs from the formatted value, such as "1/8
 * in" for 3.18 mm, the field shows the value at its end.
 *
 * @param <T> value, compared by {@code equals}
 */
public final class ValidatedField<T> {
    /** Chosen by eye: longer than the pauses of somebody who types a number. */
    private static final Messages MESSAGES = Messages.of(ValidatedField.class);

    private static final int TYPING_PAUSE_MS = 450;

    private static final String OUTLINE_PROPERTY = "JComponent.outline"; // of FlatLaf

    private final JTextField textField = new JTextField(10);
    private final JLabel interpretation = new JLabel();
    private final WrappedText errorText = new WrappedText();
    private final TextFormat<T> format;
    private final Timer typingTimer = new Timer(TYPING_PAUSE_MS, e -> commit(false));
    private final TypingUndo typingUndo = new TypingUndo(textField);
    private Runnable commitListener = () -> {};
    private Runnable refusalListener = () -> {};
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;
    private T value;
    private Optional<T> example = Optional.empty();

    /** The text that the program put into the field; empty once the user has typed another that was read. */
    private Optional<String> written;

    /** The text for the present value. */
    private String committed;

    private Object editSession = new Object();
    private boolean updating;

    /**
     * @param name of the component, also for screen readers
     * @param commitWhileTyping whether to commit after a pause in typing
     */
    ValidatedField(String name, T value, TextFormat<T> format, boolean commitWhileTyping) {
        this.format = format;
        this.value = value;
        textField.setName(name);
        textField.getAccessibleContext().setAccessibleName(FieldWords.of(name));
        textField.setText(format.write(value, unit));
        typingUndo.forget();
        committed = textField.getText();
        written = Optional.of(committed);
        interpretation.setEnabled(false);
        textField.putClientProperty("JTextField.trailingComponent", interpretation);
        errorText.setVisible(false);
        typingTimer.setRepeats(false);
        textField.addActionListener(e -> commit(true));
        textField.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                editSession = new Object();
                textField.selectAll();
                // The parent's method scrolls the form; that of a text field scrolls its text.
                ((JComponent) textField.getParent()).scrollRectToVisible(textField.getBounds());
            }

            @Override
            public void focusLost(FocusEvent e) {
                commit(true);
            }
        });
        textField.getDocument().addDocumentListener((TextChangeListener) () -> {
            if (commitWhileTyping && !updating) {
                typingTimer.restart();
            }
        });
        textField.getInputMap().put(KeyStroke.getKeyStroke("ESCAPE"), "back");
        textField.getActionMap().put("back", new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                revert();
            }
        });
    }

    public JTextField textField() {
        return textField;
    }

    /** Returns the component that shows the error; hidden while there is none. */
    public WrappedText errorText() {
        return errorText;
    }

    /** Sets an example that is shown in grey while the field is empty. */
    public ValidatedField<T> withExample(T example) {
        this.example = Optional.of(example);
        showExample();
        return this;
    }

    /**
     * Adds a button that offers texts to choose from, such as those that the user works with; Alt and the down arrow
     * open it too.
     *
     * @param choices returns the texts; asked whenever it is opened
     */
    public ValidatedField<T> withChoices(Supplier<List<String>> choices) {
        JButton open = new JButton(ToolIcons.icon("choices"));
        open.setName("choose " + name());
        open.setFocusable(false);
        open.setToolTipText(MESSAGES.text("choices.tip"));
        open.getAccessibleContext().setAccessibleName(MESSAGES.text("choices.tip"));
        open.putClientProperty("JButton.buttonType", "toolBarButton");
        open.addActionListener(e -> showChoices(choices.get()));
        JPanel trailing = new JPanel(new BorderLayout());
        trailing.setOpaque(false);
        trailing.add(interpretation, BorderLayout.CENTER);
        trailing.add(open, BorderLayout.EAST);
        textField.putClientProperty("JTextField.trailingComponent", trailing);
        textField.getInputMap().put(KeyStroke.getKeyStroke("alt DOWN"), "choices");
        textField.getActionMap().put("choices", new RunnableAction("", "", () -> showChoices(choices.get())));
        return this;
    }

    private void showChoices(List<String> choices) {
        JPopupMenu menu = new JPopupMenu();
        for (String choice : choices) {
            JMenuItem item = new JMenuItem(choice);
            item.addActionListener(e -> {
                textField.setText(choice);
                commit(true);
            });
            menu.add(item);
        }
        menu.show(textField, 0, textField.getHeight());
    }

    /** Returns the name of the component. */
    public String name() {
        return textField.getName();
    }

    /** Returns the last valid value. */
    public T value() {
        return value;
    }

    /** Returns the text that the user typed for the value; empty where the program wrote it. */
    public Optional<String> typedText() {
        return written.isPresent() ? Optional.empty() : Optional.of(textField.getText());
    }

    /** Returns an object that identifies the edits between gaining and losing the focus. */
    public Object editSession() {
        return editSession;
    }

    /** Sets the listener that is called whenever the user has changed the value. */
    public void onCommit(Runnable listener) {
        commitListener = listener;
    }

    /** Sets the listener that is called whenever a text was refused, and when that is over. */
    void onRefusal(Runnable listener) {
        refusalListener = listener;
    }

    /** Sets the unit in which a length is shown and a bare number is read. A typed text stays while it fits. */
    void setUnit(MeasureUnit newUnit) {
        Optional<String> typed = typedText();
        unit = newUnit;
        showExample();
        if (!isRefused()) {
            show(typed);
        }
    }

    /** Sets the value; the text stays as it was typed where it already stands for this value. */
    public void setValue(T newValue) {
        if (!newValue.equals(value)) {
            value = newValue;
            show(Optional.empty());
        }
    }

    /**
     * Sets the value and the text that was typed for it; a text that does not stand for the value, as in another unit,
     * is not shown.
     */
    public void setValue(T newValue, Optional<String> typed) {
        if (!newValue.equals(value) || (!isRefused() && !typed.equals(typedText()) && !textField.isFocusOwner())) {
            value = newValue;
            show(typed);
        }
    }

    /** Replaces the text by the last valid value. */
    void revert() {
        show(Optional.empty());
    }

    /** Discards a text that is refused or was not committed. */
    void discardUncommitted() {
        if (isRefused() || !textField.getText().equals(committed)) {
            revert();
        }
        typingUndo.forget();
    }

    /** Returns whether the text is refused. */
    boolean isRefused() {
        return !errorText.getText().isEmpty();
    }

    private void showExample() {
        textField.putClientProperty(
                "JTextField.placeholderText",
                example.map(shown -> MESSAGES.text("field.example", format.write(shown, unit)))
                        .orElse(null));
    }

    private void show(Optional<String> typed) {
        Optional<String> fitting = typed.filter(this::standsForValue);
        String text = fitting.orElseGet(() -> format.write(value, unit));
        committed = text;
        written = fitting.isPresent() ? Optional.empty() : Optional.of(text);
        if (!text.equals(textField.getText())) {
            updating = true;
            typingUndo.unrecorded(() -> textField.setText(text));
            updating = false;
        }
        typingTimer.stop();
        setError("");
    }

    private boolean standsForValue(String text) {
        try {
            return format.read(text, unit).equals(value);
        } catch (UserFacingException e) {
            return false;
        }
    }

    /** @param finished whether the user has finished typing, so that a text which cannot be read is an error */
    private void commit(boolean finished) {
        typingTimer.stop();
        String text = textField.getText();
        try {
            boolean untouched = written.equals(Optional.of(text));
            T typed = untouched ? value : format.read(text, unit);
            boolean changed = !typed.equals(value);
            value = typed;
            if (!untouched) {
                written = Optional.of(text).filter(format.write(typed, unit)::equals);
            }
            committed = text;
            setError("");
            if (finished) {
                typingUndo.forget();
            }
            if (changed) {
                commitListener.run();
            }
        } catch (UserFacingException e) {
            if (finished || isRefused()) {
                setError(e.getMessage());
            }
        }
    }

    private void setError(String message) {
        boolean error = !message.isEmpty();
        boolean news = !message.equals(errorText.getText());
        textField.putClientProperty(OUTLINE_PROPERTY, error ? "error" : null);
        textField.getAccessibleContext().setAccessibleDescription(error ? message : textField.getToolTipText());
        errorText.showText(message);
        String formatted = format.write(value, unit);
        boolean asShown = error || formatted.isEmpty() || formatted.equals(textField.getText());
        interpretation.setText(asShown ? "" : " = " + formatted + " ");
        if (news) {
            refusalListener.run();
        }
    }
}
