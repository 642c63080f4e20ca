package weltwright.app.gui.form;

import java.util.function.Consumer;
import javax.swing.text.AttributeSet;
import javax.swing.text.BadLocationException;
import javax.swing.text.DocumentFilter;
import weltwright.message.Messages;
import weltwright.units.TextField;

/**
 * A document filter that removes the characters that a {@link TextField} does not allow and limits the length of the
 * text.
 */
public final class TextLimitFilter extends DocumentFilter {
    private static final Messages TEXTS = Messages.of(TextLimitFilter.class);

    private final TextField field;
    private final Consumer<String> omissionListener;

    /** @param omissionListener receives a message after each edit: what was cut off at the limit, or the empty text */
    public TextLimitFilter(TextField field, Consumer<String> omissionListener) {
        this.field = field;
        this.omissionListener = omissionListener;
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
        // In UTF-16 units; a character has one or two, so the text never has more characters than the field allows.
        int maxLength = Math.max(0, field.longest() - (bypass.getDocument().getLength() - length));
        int end = Math.min(maxLength, clean.length());
        if (end < clean.length() && end > 0 && Character.isHighSurrogate(clean.charAt(end - 1))) {
            end--;
        }
        bypass.replace(offset, length, clean.substring(0, end), attributes);
        omissionListener.accept(
                end == clean.length()
                        ? ""
                        : TEXTS.text(
                                "text-limit-filter.there-is-room-for-characters",
                                field.longest(),
                                clean.length() - end));
    }
}
