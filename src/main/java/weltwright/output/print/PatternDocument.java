package weltwright.output.print;

import java.util.List;
import weltwright.output.pdf.PdfPages;

/**
 * A pattern ready to print.
 *
 * @param pages first those of the pattern, then those of the bench card
 * @param patternPages how many are of the pattern
 * @param inParts each piece that runs over several pages
 */
public record PatternDocument(PdfPages pages, int patternPages, List<DividedPiece> inParts) {

    public PatternDocument {
        inParts = List.copyOf(inParts);
    }

    /** A piece larger than a page, and how many pages show a part of it. */
    public record DividedPiece(String name, int pages) {}

    /** Returns how many pages are of the bench card. */
    public int cardPages() {
        return pages.count() - patternPages;
    }
}
