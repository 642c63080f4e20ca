package weltwright.app.gui.leather;

import java.awt.Component;
import java.awt.Dialog;
import java.awt.Rectangle;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.message.Messages;

/** A modal dialog that puts something on the shelf or is cancelled, also by Escape. */
final class ShelfDialog {
    private final JDialog dialog;
    private final JButton save;

    /** @param saveText of the button that puts something on the shelf */
    ShelfDialog(Component parent, String title, String name, String saveText) {
        dialog = new JDialog(SwingUtilities.getWindowAncestor(parent), title, Dialog.ModalityType.APPLICATION_MODAL);
        dialog.setName(name);
        save = new JButton(saveText);
        save.setName("save stock");
    }

    /** Shows the dialog until it is closed. */
    void open(JComponent body, Component parent, Runnable saveAction) {
        save.addActionListener(e -> saveAction.run());
        JButton cancel = new JButton(Messages.of(ShelfDialog.class).text("editor.cancel"));
        cancel.setName("cancel stock");
        cancel.addActionListener(e -> close());
        JPanel content = new JPanel(new MigLayout("insets 0 0 12 0, fill, wrap 1", "[grow,fill]"));
        content.add(body, "push, grow");
        JPanel buttons = new JPanel(new MigLayout("insets 0 16 0 16"));
        buttons.add(new JPanel(), "pushx");
        buttons.add(cancel);
        buttons.add(save);
        content.add(buttons);
        dialog.setContentPane(content);
        dialog.getRootPane().setDefaultButton(save);
        dialog.getRootPane()
                .getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
                .put(KeyStroke.getKeyStroke("ESCAPE"), "close");
        dialog.getRootPane().getActionMap().put("close", new RunnableAction("close", "", this::close));
        dialog.pack();
        Rectangle screen = dialog.getGraphicsConfiguration().getBounds();
        dialog.setSize(Math.min(dialog.getWidth(), screen.width), Math.min(dialog.getHeight(), screen.height));
        dialog.setLocationRelativeTo(parent);
        dialog.setVisible(true);
    }

    JDialog window() {
        return dialog;
    }

    void setSavable(boolean savable) {
        save.setEnabled(savable);
    }

    /** Commits what is being typed. Returns whether no entry of a form is refused; else shows the refused one. */
    boolean commit(FormPanel form) {
        if (dialog.getFocusOwner() instanceof JTextField line) {
            line.postActionEvent();
        }
        if (form.refusedField().isPresent()) {
            form.showRefusedField();
            return false;
        }
        return true;
    }

    void close() {
        dialog.dispose();
    }
}
