package weltwright.output.print;

import java.io.IOException;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.RigidMotion;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.PdfCanvas;

/** What is printed true to size and in one part where a page has room: a piece, or a layout of pieces on leather. */
interface PrintedDrawing {
    /** What it is called on the page. */
    String name();

    /** Its name, with what else is said of it in the page's square. */
    String caption();

    /** The area that it needs on the paper, in its frame: it, its marks, its labels and some clearance. */
    Geometry footprint();

    /** All that is drawn of it but its labels, as lines, in its frame. */
    Geometry lines();

    /** Labels, in its frame. */
    List<Label> labels();

    /** Draws it without its labels where {@code placement} puts its frame on the page. */
    void draw(PdfCanvas canvas, RigidMotion placement) throws IOException;
}
