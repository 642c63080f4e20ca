package weltwright.app.gui.form;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** A document listener with one method for all changes of the text. */
public interface TextChangeListener extends DocumentListener {
    void textChanged();

    @Override
    default void insertUpdate(DocumentEvent e) {
        textChanged();
    }

    @Override
    default void removeUpdate(DocumentEvent e) {
        textChanged();
    }

    @Override
    default void changedUpdate(DocumentEvent e) {
        // a change of style, not of text
    }
}
