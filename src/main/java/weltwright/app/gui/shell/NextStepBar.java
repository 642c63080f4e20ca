package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Graphics;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.message.Messages;

/**
 * What to do next, and a button for each of its actions: at the foot of the form and as wide, or in a row below the
 * drawing.
 */
final class NextStepBar extends JPanel {
    private static final Messages TEXTS = Messages.of(NextStepBar.class);

    private static final String ROW = "growx, hmin 34, wmin 0";

    private final WrappedText text = new WrappedText(ThemeColors::text);
    private final JButton proposed = new JButton();
    private final JPanel buttons = new JPanel();
    private final transient Consumer<NextStepPrompt.NextAction> performer;
    private transient NextStepPrompt shown = new NextStepPrompt("", List.of());

    /** @param performer performs the action of a pressed button */
    NextStepBar(Consumer<NextStepPrompt.NextAction> performer) {
        this.performer = performer;
        text.setName("next step");
        proposed.setName("onward");
        proposed.setToolTipText(TEXTS.text("next-step-bar.ctrl-enter"));
        proposed.putClientProperty("FlatLaf.style", "font: bold; minimumHeight: 34");
        proposed.addActionListener(e -> shown.action().ifPresent(performer));
        proposed.setVisible(false);
        buttons.setOpaque(false);
        setInRow(false);
    }

    @Override
    protected void paintComponent(Graphics g) {
        super.paintComponent(g);
        g.setColor(ThemeColors.line());
        g.fillRect(0, 0, getWidth(), UIScale.scale(1));
    }

    /** Lays text and buttons out in a row, or else below each other. */
    void setInRow(boolean row) {
        removeAll();
        setLayout(
                row
                        ? new WrappedTextLayout("insets 8 16 8 16, fillx, hidemode 3, gapx 16", "[grow,fill][]")
                        : new WrappedTextLayout(
                                "insets 10 16 14 16, fillx, hidemode 3, wrap 1, gapy 8", "[grow,fill]"));
        buttons.removeAll();
        buttons.setLayout(
                row
                        ? new MigLayout("insets 0, gapx 6, nogrid")
                        : new MigLayout("insets 0, fillx, wrap 1, gapy 6", "[grow,fill]"));
        buttons.add(proposed, ROW);
        showButtons();
        add(text, "wmin 0");
        add(buttons, "wmin 0");
    }

    /** Returns the button of the proposed action. */
    JButton proposedButton() {
        return proposed;
    }

    /** Returns whether the button performs an action. */
    boolean proposes(NextStepPrompt.NextAction action) {
        return shown.action().equals(Optional.of(action));
    }

    void show(NextStepPrompt next) {
        boolean sameButtons = next.actions().equals(shown.actions());
        shown = next;
        text.showText(next.text());
        if (!sameButtons) {
            showButtons();
        }
    }

    private void showButtons() {
        while (buttons.getComponentCount() > 1) {
            buttons.remove(1); // the proposed button stays, or the window would forget that Enter presses it
        }
        proposed.setVisible(shown.action().isPresent());
        shown.action().ifPresent(action -> proposed.setText(action.label()));
        shown.actions().stream().skip(1).forEach(action -> {
            JButton button = new JButton(action.label());
            button.setName("onward " + action.label());
            button.addActionListener(e -> performer.accept(action));
            buttons.add(button, ROW);
        });
        buttons.revalidate();
        buttons.repaint();
    }
}
