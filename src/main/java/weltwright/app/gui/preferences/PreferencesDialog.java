package weltwright.app.gui.preferences;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Dialog;
import java.awt.Frame;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.util.function.Consumer;
import java.util.prefs.Preferences;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.UIManager;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.paper.InstalledPrinters;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.job.MakerDefaultsFile;
import weltwright.message.Messages;

/**
 * The dialog of the preferences and the maker's defaults. Each change holds at once. It is modal, and does not close
 * while an entry is refused.
 */
public final class PreferencesDialog {
    private static final Messages MESSAGES = Messages.of(PreferencesDialog.class);

    /** Width of the forms in px; chosen by eye. */
    private static final int WIDTH = 440;

    private final JDialog dialog;
    private final ProgramForm program;
    private final MakerDefaultsForm defaults;

    private PreferencesDialog(
            Frame over,
            Preferences preferences,
            DisplayUnit unit,
            MakerDefaultsFile file,
            Runnable printingListener,
            Consumer<Consumer<InstalledPrinters>> printerSearch) {
        dialog = new JDialog(over, MESSAGES.text("dialog.title"), Dialog.ModalityType.APPLICATION_MODAL);
        dialog.setName("preferences");
        dialog.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        dialog.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }
        });
        defaults = new MakerDefaultsForm(file, new FileDialogs(dialog, preferences));
        defaults.setUnit(unit.unit());
        program = new ProgramForm(preferences, unit, () -> defaults.setUnit(unit.unit()), printingListener);
        printerSearch.accept(found -> {
            program.setPrinters(found);
            pack();
        });
        JButton close = new JButton(new RunnableAction(MESSAGES.text("dialog.close"), "", this::close));
        close.setName("close preferences");
        JPanel content = new JPanel(
                new WrappedTextLayout("insets 12 0 16 0, wrap 1, fillx, gapy 6", "[" + WIDTH + "!,grow,fill]"));
        content.add(program, "wmin 0");
        content.add(defaults, "wmin 0");
        JPanel foot = new JPanel(new MigLayout("insets 10 24 0 24", "push[]"));
        foot.add(close);
        content.add(foot);
        JScrollPane scroll = new JScrollPane(content);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        scroll.getVerticalScrollBar().setUnitIncrement(UIScale.scale(24));
        dialog.setContentPane(scroll);
        dialog.getRootPane()
                .getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
                .put(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "close");
        dialog.getRootPane().getActionMap().put("close", new RunnableAction("", "", this::close));
        defaults.onRefusal(this::pack);
        defaults.onError(this::pack);
    }

    /**
     * Shows the dialog and returns when it is closed.
     *
     * @param printingListener called after paper or printer were changed
     * @param printerSearch finds the printers in the background, and calls its argument with them on the event thread
     */
    public static void show(
            Frame over,
            Preferences preferences,
            DisplayUnit unit,
            MakerDefaultsFile file,
            Runnable printingListener,
            Consumer<Consumer<InstalledPrinters>> printerSearch) {
        PreferencesDialog opened =
                new PreferencesDialog(over, preferences, unit, file, printingListener, printerSearch);
        opened.pack();
        opened.dialog.setLocationRelativeTo(over);
        opened.dialog.setVisible(true);
    }

    private void pack() {
        dialog.pack();
        program.invalidate(); // the height of wrapped text is known once it has its width
        defaults.invalidate();
        dialog.pack();
        int screen = dialog.getGraphicsConfiguration().getBounds().height;
        if (dialog.getHeight() > screen) {
            dialog.setSize(dialog.getWidth() + UIManager.getInt("ScrollBar.width"), screen);
        }
    }

    private void close() {
        if (dialog.getFocusOwner() instanceof JTextField line && line.isEditable()) {
            line.postActionEvent();
        }
        if (defaults.refusedField().isPresent()) {
            defaults.showRefusedField();
        } else {
            dialog.dispose();
        }
    }
}
