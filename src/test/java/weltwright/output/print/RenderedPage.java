package weltwright.output.print;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** A page of a PDF as a printer of 300 dots to the inch would put it on paper. */
final class RenderedPage {
    static final int DPI = 300;
    static final double PX_PER_MM = DPI / 25.4;

    private RenderedPage() {}

    static BufferedImage page(Path pdf, int page) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFRenderer(document).renderImageWithDPI(page, DPI, ImageType.GRAY);
        }
    }
}
