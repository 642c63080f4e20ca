package weltwright.app.gui.widget;

import java.awt.Color;
import java.util.function.Supplier;
import javax.swing.JTextArea;
import javax.swing.UIManager;
import javax.swing.text.DefaultCaret;
import weltwright.app.gui.theme.ThemeColors;

/** A read-only text that wraps at its width, in the font of labels. Hidden while it is empty. */
public class WrappedText extends JTextArea {
    private final transient Supplier<Color> color;

    public WrappedText() {
        this(ThemeColors::error);
    }

    /** @param color of the text; called again whenever the theme changes */
    public WrappedText(Supplier<Color> color) {
        this.color = color;
        setLineWrap(true);
        setWrapStyleWord(true);
        setEditable(false);
        setFocusable(false);
        setOpaque(false);
        setBorder(null);
        setColumns(1); // keeps the preferred width small: the layout sets the width
        installDefaults();
    }

    /** Sets the text, and shows the component unless the text is empty. */
    public final void showText(String text) {
        if (!text.equals(getText())) {
            setText(text);
            getAccessibleContext().setAccessibleName(text);
        }
        setVisible(!text.isEmpty());
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (color != null) {
            installDefaults();
        }
    }

    /** Sets what a change of the look and feel resets. */
    private void installDefaults() {
        // Keeps a new text from scrolling the form.
        ((DefaultCaret) getCaret()).setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
        setForeground(color.get());
        setFont(UIManager.getFont("Label.font"));
        setOpaque(false);
        setBorder(null);
        setDropTarget(null); // what is dropped on it is for the window
    }
}
