package weltwright.app.gui.form;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** Is told when a text becomes another one. */
public interface TextChangeListener extends DocumentListener {
    void typed();

    @Override
    default void insertUpdate(DocumentEvent e) {
        typed();
    }

    @Override
    default void removeUpdate(DocumentEvent e) {
        typed();
    }

    @Override
    default void changedUpdate(DocumentEvent e) {
        // a change of style, not of text
    }
}
