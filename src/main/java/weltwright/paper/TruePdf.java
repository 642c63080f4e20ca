package weltwright.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;

/** A PDF that asks to be printed at its true size. */
final class TruePdf {
    /** ISO 32000-1, 7.5.2: a PDF begins with this. */
    static final FileKind KIND = FileKind.of("a PDF", "^%PDF-");

    private TruePdf() {}

    /** Draws the pages of a document. */
    @FunctionalInterface
    interface Pages {
        void drawIn(PDDocument document, Lettering lettering) throws IOException;
    }

    /** The PDF's bytes. */
    static byte[] bytes(String title, Pages pages) {
        try (PDDocument document = new PDDocument()) {
            document.getDocumentInformation().setTitle(title);
            document.getDocumentInformation().setCreator("Weltwright");
            PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
            // Viewers that heed it offer "actual size" instead of "fit to page" (ISO 32000-1, table 150).
            preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
            document.getDocumentCatalog().setViewerPreferences(preferences);
            pages.drawIn(document, Lettering.in(document));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            // Nothing here reads or writes a file of the user's.
            throw new UncheckedIOException(e);
        }
    }

    static void write(byte[] pdf, Path file) {
        AtomicFile.of(file, KIND).write(out -> out.write(pdf));
    }
}
