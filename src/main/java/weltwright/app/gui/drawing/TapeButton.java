package weltwright.app.gui.drawing;

import java.util.List;
import java.util.function.Supplier;
import javax.swing.JToggleButton;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.message.Messages;

/** A button that takes the measuring tape of canvases in hand or puts it away. */
public final class TapeButton extends JToggleButton {
    private static final Messages TEXTS = Messages.of(TapeButton.class);

    /**
     * @param canvases all that it is for
     * @param active returns that which is visible
     */
    public TapeButton(List<DrawingCanvas> canvases, Supplier<DrawingCanvas> active) {
        super(TEXTS.text("tape"));
        setName("tape");
        setToolTipText(TEXTS.text("tape.tip"));
        ToolIcons.replaceText(this, "tape");
        addActionListener(e -> {
            canvases.forEach(canvas -> canvas.setTapeInHand(isSelected()));
            active.get().requestFocusInWindow();
        });
        canvases.forEach(canvas -> canvas.addTapeListener(() -> setSelected(canvas.isTapeInHand())));
    }
}
