package weltwright.output.pdf;

import java.awt.Shape;
import java.util.List;

/**
 * A line of text that is ready to be drawn, its parts from left to right. Lengths are in em, the size of the letters; y
 * is up from the base line.
 *
 * @param parts in the order in which they are seen
 * @param widthEm of the whole
 */
record ShapedText(List<Part> parts, double widthEm) {

    /** A stretch of the line that is drawn in one way. */
    sealed interface Part permits Letters, Outlines {
        /** From the start of the line to the start of the part. */
        double xEm();
    }

    /** Letters of the embedded typeface. */
    record Letters(double xEm, String text) implements Part {}

    /**
     * Characters that the embedded typeface lacks, as areas.
     *
     * @param text what they say, in the order of reading
     * @param shape in thousandths of an em, y <em>down</em>, from the part's own start
     */
    record Outlines(double xEm, String text, Shape shape) implements Part {}
}
