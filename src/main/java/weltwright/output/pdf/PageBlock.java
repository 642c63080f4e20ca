package weltwright.output.pdf;

import java.io.IOException;
import weltwright.geometry.Point;

/** Something beside the pieces that is printed once, wherever there is room: words, a legend. */
public interface PageBlock {
    double widthMm();

    double heightMm();

    void draw(PdfCanvas ink, PdfTypeface lettering, Point upperLeft) throws IOException;
}
