package weltwright.app.gui.form;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import javax.swing.undo.CompoundEdit;
import javax.swing.undo.UndoManager;
import javax.swing.undo.UndoableEdit;
import org.jspecify.annotations.Nullable;

/**
 * Undo and redo of typing, by the keys of the job's own undo. Where nothing is left to undo in the text, its keys do
 * nothing here and reach the window, which undoes in the job.
 */
public final class TypingUndo {
    private final UndoManager edits = new UndoManager();
    private @Nullable CompoundEdit group;
    private @Nullable AWTEvent groupCause;
    private boolean paused;

    /** Records the edits of a text component and binds the keys. */
    public TypingUndo(JTextComponent component) {
        component.getDocument().addUndoableEditListener(e -> {
            if (!paused) {
                add(e.getEdit());
            }
        });
        int menuKey = Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx();
        bind(component, KeyStroke.getKeyStroke(KeyEvent.VK_Z, menuKey), "undo typing", false);
        bind(
                component,
                KeyStroke.getKeyStroke(KeyEvent.VK_Z, menuKey | InputEvent.SHIFT_DOWN_MASK),
                "redo typing",
                true);
    }

    /** Forgets the edits so far: they are part of the job from here on, or belong to another. */
    public void forget() {
        endGroup();
        edits.discardAllEdits();
    }

    /** Replaces the text without recording it, and forgets the edits so far. */
    public void unrecorded(Runnable replacement) {
        paused = true;
        try {
            replacement.run();
        } finally {
            paused = false;
        }
        forget();
    }

    /**
     * Edits that one event of the user causes, such as removing a selection and typing over it, are undone together.
     */
    private void add(UndoableEdit edit) {
        AWTEvent cause = EventQueue.getCurrentEvent();
        if (group == null || cause == null || cause != groupCause) {
            endGroup();
            group = new CompoundEdit();
            groupCause = cause;
            edits.addEdit(group);
        }
        group.addEdit(edit);
    }

    private void endGroup() {
        if (group != null) {
            group.end();
            group = null;
            groupCause = null;
        }
    }

    private void bind(JTextComponent component, KeyStroke key, String name, boolean redo) {
        component.getInputMap().put(key, name);
        component.getActionMap().put(name, new AbstractAction() {
            @Override
            public boolean isEnabled() {
                endGroup();
                return redo ? edits.canRedo() : edits.canUndo();
            }

            @Override
            public void actionPerformed(ActionEvent e) {
                if (redo) {
                    edits.redo();
                } else {
                    edits.undo();
                }
            }
        });
    }
}
