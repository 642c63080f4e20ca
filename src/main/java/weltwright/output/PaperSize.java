package weltwright.output;

import weltwright.message.Messages;
import weltwright.units.PrintScale;

/**
 * A paper size in portrait orientation. Sources: ISO 216 for A4 and A3; ANSI/ASME Y14.1 for Letter (A) and Tabloid (B).
 */
public enum PaperSize {
    A4("A4", 210, 297),
    LETTER(Messages.of(PaperSize.class).text("paper-size.letter"), 215.9, 279.4),
    A3("A3", 297, 420),
    TABLOID(Messages.of(PaperSize.class).text("paper-size.tabloid"), 279.4, 431.8),
    /** One page of the smallest size from A3 to A0 on which the whole pattern fits uncut. */
    ONE_LARGE_PAGE(Messages.of(PaperSize.class).text("paper-size.one-large-page"), 297, 420);

    private final String words;
    private final double widthMm;
    private final double heightMm;

    PaperSize(String words, double widthMm, double heightMm) {
        this.words = words;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** The name for display. */
    public String words() {
        return words;
    }

    /** The layout of a page, of the smallest one where there are several sizes. */
    public PageFrame frame(PrintScale scale) {
        return PageFrame.of(widthMm, heightMm, scale);
    }

    /** The paper of the bench card: office paper of the same standard. */
    public PaperSize ofCard() {
        return switch (this) {
            case A4, A3, ONE_LARGE_PAGE -> A4;
            case LETTER, TABLOID -> LETTER;
        };
    }
}
