package weltwright.output.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The pages of a PDF that this program made: their sizes, and each as an image. May be used on any thread. */
public final class PdfPages {
    private static final double POINTS_PER_INCH = 72; // ISO 32000-1, 8.3.2.3
    private static final double MM_PER_INCH = 25.4;

    private final byte[] pdf;
    private final List<PageSize> sizes;

    /** The size of a page in mm. */
    public record PageSize(double widthMm, double heightMm) {}

    private PdfPages(byte[] pdf, List<PageSize> sizes) {
        this.pdf = pdf;
        this.sizes = List.copyOf(sizes);
    }

    public static PdfPages of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<PageSize> sizes = new ArrayList<>();
            for (PDPage page : document.getPages()) {
                PDRectangle box = page.getMediaBox();
                sizes.add(new PageSize(millimetres(box.getWidth()), millimetres(box.getHeight())));
            }
            return new PdfPages(pdf.clone(), sizes);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the PDF was written by this program
        }
    }

    /** Returns the size of each page. */
    public List<PageSize> sizes() {
        return sizes;
    }

    public int count() {
        return sizes.size();
    }

    /** Returns the content of the PDF file. */
    public byte[] bytes() {
        return pdf.clone();
    }

    /**
     * Draws a page, black on white where it has no colour.
     *
     * @param page its index from 0
     */
    public BufferedImage image(int page, double pxPerMm) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            float scale = (float) (pxPerMm * MM_PER_INCH / POINTS_PER_INCH);
            return new PDFRenderer(document).renderImage(page, scale, ImageType.RGB);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the PDF was written by this program
        }
    }

    private static double millimetres(double points) {
        return points * MM_PER_INCH / POINTS_PER_INCH;
    }
}
