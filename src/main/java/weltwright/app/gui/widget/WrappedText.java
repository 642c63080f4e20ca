package weltwright.app.gui.widget;

import java.awt.Color;
import java.util.function.Supplier;
import javax.swing.JTextArea;
import javax.swing.UIManager;
import javax.swing.text.DefaultCaret;
import weltwright.app.gui.theme.ThemeColors;

/** A few sentences to read, broken into lines as wide as there is room for. Hidden while there is nothing to say. */
public class WrappedText extends JTextArea {
    private final transient Supplier<Color> colour;

    public WrappedText() {
        this(ThemeColors::error);
    }

    /** @param colour asked again whenever the look changes */
    public WrappedText(Supplier<Color> colour) {
        this.colour = colour;
        setLineWrap(true);
        setWrapStyleWord(true);
        setEditable(false);
        setFocusable(false);
        setOpaque(false);
        setBorder(null);
        setColumns(1); // the layout gives the width; the text must not ask for one
        dress();
    }

    public final void say(String text) {
        if (!text.equals(getText())) {
            setText(text);
            getAccessibleContext().setAccessibleName(text);
        }
        setVisible(!text.isEmpty());
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (colour != null) {
            dress();
        }
    }

    /** Each look brings its own caret and colours. */
    private void dress() {
        // New words must not scroll the form to themselves.
        ((DefaultCaret) getCaret()).setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
        setForeground(colour.get());
        setFont(UIManager.getFont("Label.font"));
        setOpaque(false);
        setBorder(null);
    }
}
