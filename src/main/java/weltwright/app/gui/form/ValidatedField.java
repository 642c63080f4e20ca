package weltwright.app.gui.form;

import java.awt.event.ActionEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.function.Function;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import weltwright.app.gui.widget.WrappedText;
import weltwright.error.UserFacingException;

/**
 * A text field with a typed value. The text is committed at Enter, at the loss of the focus and, if so chosen, shortly
 * after typing stops. An invalid text leaves the value as it was, shows an error text, and is reverted by Escape. Where
 * the text differs from the formatted value, such as "1/8 in" for 3.18 mm, the field shows the value at its end.
 *
 * @param <T> value, compared by {@code equals}
 */
public final class ValidatedField<T> {
    /** Chosen by eye: longer than the pauses of somebody who types a number. */
    private static final int TYPING_PAUSE_MS = 450;

    private static final String OUTLINE_PROPERTY = "JComponent.outline"; // of FlatLaf

    private final JTextField textField = new JTextField(10);
    private final JLabel interpretation = new JLabel();
    private final WrappedText errorText = new WrappedText();
    private final Function<String, T> parser;
    private final Function<T, String> formatter;
    private final Timer typingTimer = new Timer(TYPING_PAUSE_MS, e -> commit());
    private Runnable commitListener = () -> {};
    private T value;
    private Object editSession = new Object();
    private boolean updating;

    /**
     * @param name of the component, also for screen readers
     * @param parser reads a value from the text or throws {@link UserFacingException}
     * @param formatter writes a value as a text that the parser reads
     * @param commitWhileTyping whether to commit after a pause in typing
     */
    ValidatedField(
            String name,
            T value,
            Function<String, T> parser,
            Function<T, String> formatter,
            boolean commitWhileTyping) {
        this.parser = parser;
        this.formatter = formatter;
        this.value = value;
        textField.setName(name);
        textField.getAccessibleContext().setAccessibleName(name);
        textField.setText(formatter.apply(value));
        interpretation.setEnabled(false);
        textField.putClientProperty("JTextField.trailingComponent", interpretation);
        errorText.setVisible(false);
        typingTimer.setRepeats(false);
        textField.addActionListener(e -> commit());
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
                commit();
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

    /** Returns the last valid value. */
    public T value() {
        return value;
    }

    /** Returns an object that identifies the edits between gaining and losing the focus. */
    public Object editSession() {
        return editSession;
    }

    /** Sets the listener that is called whenever the user has changed the value. */
    public void onCommit(Runnable listener) {
        commitListener = listener;
    }

    /** Sets the value; the text stays as it was typed where it already stands for this value. */
    public void setValue(T newValue) {
        setValue(newValue, false);
    }

    /** Replaces the text by the last valid value. */
    void revert() {
        setValue(value, true);
    }

    boolean isInvalid() {
        return !errorText.getText().isEmpty();
    }

    private void setValue(T newValue, boolean rewrite) {
        boolean unchanged = newValue.equals(value);
        value = newValue;
        if (unchanged && !rewrite) {
            return;
        }
        updating = true;
        textField.setText(formatter.apply(newValue));
        updating = false;
        clearError();
    }

    private void commit() {
        typingTimer.stop();
        try {
            T typed = parser.apply(textField.getText());
            boolean changed = !typed.equals(value);
            value = typed;
            clearError();
            if (changed) {
                commitListener.run();
            }
        } catch (UserFacingException e) {
            textField.putClientProperty(OUTLINE_PROPERTY, "error");
            textField.getAccessibleContext().setAccessibleDescription(e.getMessage());
            errorText.showText(e.getMessage());
        }
    }

    private void clearError() {
        textField.putClientProperty(OUTLINE_PROPERTY, null);
        textField.getAccessibleContext().setAccessibleDescription(textField.getToolTipText());
        errorText.showText("");
        String formatted = formatter.apply(value);
        interpretation.setText(formatted.equals(textField.getText()) ? "" : " = " + formatted + " ");
    }
}
