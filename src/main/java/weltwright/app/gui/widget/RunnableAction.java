package weltwright.app.gui.widget;

import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;

/** An action that calls a {@link Runnable}. */
public final class RunnableAction extends AbstractAction {
    private final transient Runnable runnable;

    /** @param name see {@link MnemonicText} */
    public RunnableAction(String name, String toolTip, Runnable runnable) {
        MnemonicText text = MnemonicText.of(name);
        putValue(NAME, text.text());
        putValue(MNEMONIC_KEY, text.mnemonic());
        putValue(SHORT_DESCRIPTION, toolTip);
        this.runnable = runnable;
    }

    /** Sets the accelerator: a key by itself, such as F1. */
    public RunnableAction withKey(int keyCode) {
        putValue(ACCELERATOR_KEY, KeyStroke.getKeyStroke(keyCode, 0));
        return this;
    }

    /** Sets the accelerator: a key with Ctrl (Command on a Mac). */
    public RunnableAction withShortcut(int keyCode) {
        return withShortcut(keyCode, 0);
    }

    /** Sets the accelerator: a key with Shift and Ctrl (Command on a Mac). */
    public RunnableAction withShiftShortcut(int keyCode) {
        return withShortcut(keyCode, InputEvent.SHIFT_DOWN_MASK);
    }

    private RunnableAction withShortcut(int keyCode, int extraModifiers) {
        int modifiers = Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx() | extraModifiers;
        putValue(ACCELERATOR_KEY, KeyStroke.getKeyStroke(keyCode, modifiers));
        return this;
    }

    @Override
    public void actionPerformed(ActionEvent e) {
        runnable.run();
    }
}
