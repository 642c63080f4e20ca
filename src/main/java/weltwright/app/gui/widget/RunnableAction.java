package weltwright.app.gui.widget;

import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;

/** Something the user can do, by menu, button or key. */
public final class RunnableAction extends AbstractAction {
    private final transient Runnable what;

    /** @param name with an ampersand before the letter that, with Alt, leads to it */
    public RunnableAction(String name, String tip, Runnable what) {
        int mark = name.indexOf('&');
        putValue(NAME, name.replace("&", ""));
        if (mark >= 0) {
            putValue(MNEMONIC_KEY, (int) Character.toUpperCase(name.charAt(mark + 1)));
        }
        putValue(SHORT_DESCRIPTION, tip);
        this.what = what;
    }

    /** The same with a key, held with Ctrl (or Command on a Mac). */
    public RunnableAction on(int keyCode) {
        return on(keyCode, 0);
    }

    public RunnableAction onShift(int keyCode) {
        return on(keyCode, InputEvent.SHIFT_DOWN_MASK);
    }

    private RunnableAction on(int keyCode, int more) {
        int held = Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx() | more;
        putValue(ACCELERATOR_KEY, KeyStroke.getKeyStroke(keyCode, held));
        return this;
    }

    @Override
    public void actionPerformed(ActionEvent e) {
        what.run();
    }
}
