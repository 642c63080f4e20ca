package weltwright.app.gui.paper;

import java.util.List;
import java.util.stream.IntStream;
import weltwright.output.print.PatternDocument;

/** Which pages are printed. */
enum PageChoice {
    ALL,
    PATTERN,
    CARD,
    SHOWN;

    /**
     * Returns the indices of the pages.
     *
     * @param shown index of the page that is shown large
     */
    List<Integer> pages(PatternDocument document, int shown) {
        int count = document.pages().count();
        return (switch (this) {
                    case ALL -> IntStream.range(0, count);
                    case PATTERN -> IntStream.range(0, document.patternPages());
                    case CARD -> IntStream.range(document.patternPages(), count);
                    case SHOWN -> IntStream.of(shown);
                })
                .boxed()
                .toList();
    }
}
