package weltwright.app.gui.shell;

import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** Shows the next step: its text, and a button for each of its actions. */
final class NextStepBar extends JPanel {
    private static final String ROW = "hmin 32";

    private final WrappedText text = new WrappedText(ThemeColors::text);
    private final JButton proposed = new JButton();
    private final JPanel buttons = new JPanel(new MigLayout("insets 0, gap 6"));
    private final transient Consumer<NextStepPrompt.NextAction> performer;
    private transient NextStepPrompt shown = new NextStepPrompt("", List.of());

    /** @param performer performs the action of a pressed button */
    NextStepBar(Consumer<NextStepPrompt.NextAction> performer) {
        super(new WrappedTextLayout("insets 8 16 10 12, fillx, hidemode 3", "[grow,fill]12[]"));
        this.performer = performer;
        text.setName("next step");
        proposed.setName("onward");
        proposed.setToolTipText("Ctrl Enter");
        proposed.putClientProperty("FlatLaf.style", "font: bold");
        proposed.addActionListener(e -> shown.action().ifPresent(performer));
        proposed.setVisible(false);
        buttons.setOpaque(false);
        buttons.add(proposed, ROW);
        add(text, "wmin 0");
        add(buttons);
    }

    /** Returns the button of the proposed action. */
    JButton proposedButton() {
        return proposed;
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
        buttons.removeAll();
        buttons.add(proposed, ROW);
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
