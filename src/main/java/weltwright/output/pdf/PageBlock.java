package weltwright.output.pdf;

import java.io.IOException;
import weltwright.geometry.Point;

/** A rectangular block of text or graphics that is placed on a page wherever there is room. */
public interface PageBlock {
    double widthMm();

    double heightMm();

    void draw(PdfCanvas canvas, Point upperLeft) throws IOException;
}
