package weltwright.output.pdf;

import java.awt.print.PageFormat;
import java.awt.print.Pageable;
import java.awt.print.Printable;
import java.io.IOException;
import java.io.UncheckedIOException;
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

    public PrintPages(byte[] pdf) {
        try {
            document = Loader.loadPDF(pdf);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        pages = new PDFPageable(document);
    }

    @Override
    public int getNumberOfPages() {
        return pages.getNumberOfPages();
    }

    @Override
    public PageFormat getPageFormat(int page) {
        return pages.getPageFormat(page);
    }

    @Override
    public Printable getPrintable(int page) {
        return pages.getPrintable(page);
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
