package weltwright.output.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.message.Language;
import weltwright.message.Messages;

/**
 * Writes PDF files whose viewer preferences ask for printing without scaling. Equal pages give equal bytes: there is no
 * time stamp and no random identifier.
 */
public final class TrueSizePdf {
    private static final Messages TEXTS = Messages.of(TrueSizePdf.class);

    /** ISO 32000-1, 7.5.2: a PDF begins with this. */
    public static final FileKind KIND = FileKind.of(TEXTS.text("true-size-pdf.a-pdf"), "^%PDF-");

    private TrueSizePdf() {}

    /** Draws the pages of a document. */
    @FunctionalInterface
    public interface Pages {
        void drawIn(PDDocument document, PdfTypeface typeface) throws IOException;
    }

    /**
     * The PDF's bytes.
     *
     * @param day that it says it is of, at midnight UTC
     */
    public static byte[] bytes(String title, Optional<LocalDate> day, Pages pages) {
        try (PDDocument document = new PDDocument()) {
            document.getDocumentInformation().setTitle(title);
            document.getDocumentInformation().setCreator("Weltwright");
            document.getDocumentCatalog().setLanguage(Language.current().tag()); // for screen readers
            day.map(date -> GregorianCalendar.from(date.atStartOfDay(ZoneOffset.UTC)))
                    .ifPresent(document.getDocumentInformation()::setCreationDate);
            PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
            // Viewers that heed it offer "actual size" instead of "fit to page" (ISO 32000-1, table 150).
            preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
            document.getDocumentCatalog().setViewerPreferences(preferences);
            pages.drawIn(document, PdfTypeface.in(document));
            document.setDocumentId(0L); // otherwise the clock
            byte[] digest = digest(saved(document));
            COSArray id = new COSArray();
            id.add(new COSString(digest));
            id.add(new COSString(digest));
            document.getDocument().getTrailer().setItem(COSName.ID, id);
            return saved(document);
        } catch (IOException e) {
            // Nothing here reads or writes a file of the user's.
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    /** ISO 32000-1, 14.4, asks for a digest of this length as a file's identifier. */
    private static byte[] digest(byte[] pdf) {
        try {
            return Arrays.copyOf(MessageDigest.getInstance("SHA-256").digest(pdf), 16);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public static void write(byte[] pdf, Path file) {
        AtomicFile.of(file, KIND).write(out -> out.write(pdf));
    }
}
