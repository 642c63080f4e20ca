package weltwright.app.gui.form;

import java.util.function.Consumer;
import javax.swing.text.AttributeSet;
import javax.swing.text.BadLocationException;
import javax.swing.text.DocumentFilter;
import weltwright.units.TextField;

/**
 * Keeps what is typed or pasted into a text area as clean and as short as its field asks, and says what was left out.
 */
public final class TextLimitFilter extends DocumentFilter {
    private final TextField field;
    private final Consumer<String> say;

    /** @param say is told what was left out, or the empty text where nothing was */
    public TextLimitFilter(TextField field, Consumer<String> say) {
        this.field = field;
        this.say = say;
    }

    @Override
    public void insertString(FilterBypass bypass, int offset, String text, AttributeSet attributes)
            throws BadLocationException {
        replace(bypass, offset, 0, text, attributes);
    }

    @Override
    public void replace(FilterBypass bypass, int offset, int length, String text, AttributeSet attributes)
            throws BadLocationException {
        String clean = text == null ? "" : field.clean(text);
        // In UTF-16 units, of which a character has one or two: never more characters than the field takes.
        int room = Math.max(0, field.longest() - (bypass.getDocument().getLength() - length));
        int end = Math.min(room, clean.length());
        if (end < clean.length() && end > 0 && Character.isHighSurrogate(clean.charAt(end - 1))) {
            end--;
        }
        bypass.replace(offset, length, clean.substring(0, end), attributes);
        say.accept(
                end == clean.length()
                        ? ""
                        : "There is room for " + field.longest() + " characters: the last " + (clean.length() - end)
                                + " of what was put in are left out.");
    }
}
