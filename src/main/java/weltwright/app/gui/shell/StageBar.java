package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.ButtonGroup;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.SwingConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.theme.StateIcon;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.message.Messages;

/** The stages in a row, each with number, name and state, joined by lines; the selected one is underlined. */
final class StageBar extends JPanel {
    private static final Messages MESSAGES = Messages.of(StageBar.class);

    private final transient Map<WorkflowStage, JToggleButton> buttons = new EnumMap<>(WorkflowStage.class);

    /** @param selector shows a stage that the user has selected */
    StageBar(Consumer<WorkflowStage> selector) {
        super(new MigLayout("insets 0 12 0 12, gap 0, hidemode 3, aligny center", "", "[44!]"));
        ButtonGroup group = new ButtonGroup();
        for (WorkflowStage stage : WorkflowStage.values()) {
            JToggleButton button = new JToggleButton(stage.mnemonic() + "  " + stage.label());
            button.setName("stage " + name(stage));
            button.setMnemonic(stage.mnemonic());
            button.setHorizontalTextPosition(SwingConstants.LEADING);
            button.setIconTextGap(UIScale.scale(8));
            button.putClientProperty("JButton.buttonType", "tab");
            button.putClientProperty("FlatLaf.style", "tab.underlineHeight: 3; margin: 2,12,2,12");
            button.addActionListener(e -> selector.accept(stage));
            if (!buttons.isEmpty()) {
                add(new JoiningLine(), "w 12:28:28, h 44!");
            }
            buttons.put(stage, button);
            group.add(button);
            add(button, "h 44!");
        }
    }

    private static String name(WorkflowStage stage) {
        return stage.name().charAt(0) + stage.name().substring(1).toLowerCase(Locale.ROOT);
    }

    void select(WorkflowStage stage) {
        Objects.requireNonNull(buttons.get(stage)).setSelected(true);
    }

    /** Shows how far each stage is. */
    void show(Function<WorkflowStage, StageProgress> progress) {
        buttons.forEach((stage, button) -> {
            StageProgress now = progress.apply(stage);
            button.setIcon(icon(now.state()));
            String state = MESSAGES.text(now.state().key());
            button.getAccessibleContext().setAccessibleName(stage.label() + ", " + state);
            String why = now.reason().isEmpty() ? stage.toolTip() : now.reason();
            button.setToolTipText(MESSAGES.text("stage.tip", state, why, String.valueOf(stage.mnemonic())));
        });
    }

    private static StateIcon icon(StageState state) {
        return switch (state) {
            case OPEN -> StateIcon.RING;
            case WORKING -> StateIcon.DOT;
            case DONE -> StateIcon.TICK;
            case DOUBTFUL -> StateIcon.EXCLAMATION_MARK;
            case STOPPED -> StateIcon.CROSS;
        };
    }

    /** A line from one stage to the next. */
    private static final class JoiningLine extends JPanel {
        JoiningLine() {
            setOpaque(false);
        }

        @Override
        protected void paintComponent(Graphics g) {
            Color line = ThemeColors.line();
            g.setColor(line);
            g.fillRect(0, getHeight() / 2, getWidth(), UIScale.scale(1));
        }
    }
}
