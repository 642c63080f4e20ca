package weltwright.output;

import weltwright.units.PrintScale;

/**
 * The paper that a pattern is printed on, upright. Sizes: ISO 216 for A4 and A3; ANSI/ASME Y14.1 for Letter (A) and
 * Tabloid (B).
 */
public enum PaperSize {
    A4("A4", 210, 297),
    LETTER("Letter", 215.9, 279.4),
    A3("A3", 297, 420),
    TABLOID("Tabloid", 279.4, 431.8),
    /** One page of the least size of the ISO A series, from A3 to A0, that takes the whole pattern uncut. */
    ONE_LARGE_PAGE("One large page", 297, 420);

    private final String words;
    private final double widthMm;
    private final double heightMm;

    PaperSize(String words, double widthMm, double heightMm) {
        this.words = words;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** What a stationer calls it. */
    public String words() {
        return words;
    }

    /** The least page of it. */
    public PageFrame frame(PrintScale scale) {
        return PageFrame.of(widthMm, heightMm, scale);
    }

    /** The office paper that the bench card goes on: of the same family, and small enough for a bench. */
    public PaperSize ofCard() {
        return switch (this) {
            case A4, A3, ONE_LARGE_PAGE -> A4;
            case LETTER, TABLOID -> LETTER;
        };
    }
}
