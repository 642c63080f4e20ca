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
 * A line to type a value on. What cannot be read is said in plain words beneath it, and the last good value stays in
 * force; Escape brings that back. What was read is shown at the line's end where it was typed in other terms ("1/8 in"
 * is 3.18 mm). A value is taken at Enter, on leaving the line, and, where it is {@code lively}, soon after typing
 * stops.
 */
public final class ValidatedField<T> {
    private static final int PAUSE_MS = 450;
    private static final String OUTLINE = "JComponent.outline"; // FlatLaf's red frame round a wrong value

    private final JTextField field = new JTextField(10);
    private final JLabel reading = new JLabel();
    private final WrappedText wrong = new WrappedText();
    private final Function<String, T> reader;
    private final Function<T, String> printer;
    private final Timer pause = new Timer(PAUSE_MS, e -> take());
    private Runnable taken = () -> {};
    private T value;
    private Object session = new Object();
    private boolean showing;

    /**
     * @param name also the component's name and its name for a screen reader
     * @param reader what is typed to a value; throws {@link UserFacingException}
     * @param printer the value as text that the reader reads back
     */
    ValidatedField(String name, T value, Function<String, T> reader, Function<T, String> printer, boolean lively) {
        this.reader = reader;
        this.printer = printer;
        this.value = value;
        field.setName(name);
        field.getAccessibleContext().setAccessibleName(name);
        field.setText(printer.apply(value));
        reading.setEnabled(false);
        field.putClientProperty("JTextField.trailingComponent", reading);
        wrong.setVisible(false);
        pause.setRepeats(false);
        field.addActionListener(e -> take());
        field.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                session = new Object();
                field.selectAll();
                // A text field's own scrollRectToVisible moves its text; the form is to move.
                ((JComponent) field.getParent()).scrollRectToVisible(field.getBounds());
            }

            @Override
            public void focusLost(FocusEvent e) {
                take();
            }
        });
        field.getDocument().addDocumentListener((TextChangeListener) () -> {
            if (lively && !showing) {
                pause.restart();
            }
        });
        field.getInputMap().put(KeyStroke.getKeyStroke("ESCAPE"), "back");
        field.getActionMap().put("back", new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                revert();
            }
        });
    }

    public JTextField field() {
        return field;
    }

    /** What is wrong with what is typed; takes no room where nothing is. */
    public WrappedText wrong() {
        return wrong;
    }

    /** The last good value. */
    public T value() {
        return value;
    }

    /** The same object from entering the line until leaving it. */
    public Object session() {
        return session;
    }

    /** {@code what} is called whenever a new good value was typed. */
    public void onTaken(Runnable what) {
        taken = what;
    }

    /** Shows a value that comes from elsewhere; what is typed and means the same stays as it was typed. */
    public void show(T newValue) {
        show(newValue, false);
    }

    /** Back to the last good value. */
    void revert() {
        show(value, true);
    }

    boolean isWrong() {
        return !wrong.getText().isEmpty();
    }

    private void show(T newValue, boolean rewrite) {
        boolean same = newValue.equals(value);
        value = newValue;
        if (same && !rewrite) {
            return;
        }
        showing = true;
        field.setText(printer.apply(newValue));
        showing = false;
        right();
    }

    private void take() {
        pause.stop();
        try {
            T typed = reader.apply(field.getText());
            boolean other = !typed.equals(value);
            value = typed;
            right();
            if (other) {
                taken.run();
            }
        } catch (UserFacingException e) {
            field.putClientProperty(OUTLINE, "error");
            field.getAccessibleContext().setAccessibleDescription(e.getMessage());
            wrong.say(e.getMessage());
        }
    }

    private void right() {
        field.putClientProperty(OUTLINE, null);
        field.getAccessibleContext().setAccessibleDescription(field.getToolTipText());
        wrong.say("");
        String own = printer.apply(value);
        reading.setText(own.equals(field.getText()) ? "" : " = " + own + " ");
    }
}
