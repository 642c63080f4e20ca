package weltwright.app.gui.widget;

import com.formdev.flatlaf.ui.FlatTextAreaUI;
import java.awt.Color;
import java.util.function.Supplier;
import javax.swing.JTextArea;
import javax.swing.UIManager;
import javax.swing.text.BadLocationException;
import javax.swing.text.DefaultCaret;
import javax.swing.text.Element;
import javax.swing.text.View;
import javax.swing.text.WrappedPlainView;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.message.LineBreaks;

/**
 * A read-only text that wraps at its width, in the font of labels, never between a number and its unit. Hidden while it
 * is empty.
 */
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
        setUI(new WrappingUI());
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

    private static final class WrappingUI extends FlatTextAreaUI {
        @Override
        public View create(Element element) {
            return new WrappedPlainView(element, true) {
                @Override
                protected int calculateBreakPosition(int from, int to) {
                    int at = super.calculateBreakPosition(from, to);
                    if (at >= to) {
                        return at;
                    }
                    try {
                        return from + LineBreaks.upTo(at - from, getDocument().getText(from, to - from));
                    } catch (BadLocationException e) {
                        throw new IllegalStateException(e);
                    }
                }
            };
        }
    }
}
