package weltwright.output.pdf;

import java.awt.print.PageFormat;
import java.awt.print.Pageable;
import java.awt.print.Printable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.printing.PDFPageable;

/**
 * Pages for a printer, each at its actual size: give it to {@link java.awt.print.PrinterJob#setPageable}. Close it when
 * the job has been printed.
 */
public final class PrintPages implements Pageable, AutoCloseable {
    private final PDDocument document;
    private final PDFPageable pages;
    private final List<Integer> chosen;

    /** All pages of a PDF. */
    public PrintPages(byte[] pdf) {
        document = load(pdf);
        pages = new PDFPageable(document);
        chosen = IntStream.range(0, pages.getNumberOfPages()).boxed().toList();
    }

    /**
     * Some pages of a PDF.
     *
     * @param chosen their indices from 0, in the order in which they are printed
     */
    public PrintPages(byte[] pdf, List<Integer> chosen) {
        document = load(pdf);
        pages = new PDFPageable(document);
        this.chosen = List.copyOf(chosen);
    }

    private static PDDocument load(byte[] pdf) {
        try {
            return Loader.loadPDF(pdf);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the PDF was written by this program
        }
    }

    @Override
    public int getNumberOfPages() {
        return chosen.size();
    }

    @Override
    public PageFormat getPageFormat(int page) {
        return pages.getPageFormat(chosen.get(page));
    }

    @Override
    public Printable getPrintable(int page) {
        int index = chosen.get(page);
        Printable printable = pages.getPrintable(index);
        return (graphics, format, printed) -> printable.print(graphics, format, index);
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
