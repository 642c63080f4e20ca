package weltwright.output.print;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import weltwright.io.FileKind;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.pdf.TextBlock;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.units.PrintScale;

/**
 * A layout on leather as a PDF, true to size, on pages that are joined as those of a pattern's large pieces are, each
 * with a square of 50 mm to check. Pages without a piece are left out.
 */
public final class LayoutPagesPdf {
    private static final Messages TEXTS = Messages.of(LayoutPagesPdf.class);

    /** What may be replaced by such a file. */
    public static final FileKind KIND = TrueSizePdf.KIND;

    private static final List<String> LEGEND =
            List.of(PatternPdf.JOINING, TEXTS.text("layout-pages-pdf.long-dashes-are-the-edge"));

    private LayoutPagesPdf() {}

    /**
     * Writes the PDF.
     *
     * @param layout of at least one piece
     * @throws weltwright.error.UserFacingException where the file cannot be written
     */
    public static void write(StockLayout layout, PageHeading heading, PaperSize paper, PrintScale scale, Path file) {
        TrueSizePdf.write(bytes(layout, heading, paper, scale), file);
    }

    static byte[] bytes(StockLayout layout, PageHeading heading, PaperSize paper, PrintScale scale) {
        String title = TEXTS.text("layout-pages-pdf.layout-on", layout.stock().name());
        return TrueSizePdf.bytes(title, Optional.of(heading.date()), (document, typeface) -> {
            List<List<TextBlock>> legend = TextBlock.columns(typeface, title, LEGEND).stream()
                    .flatMap(List::stream)
                    .map(List::of)
                    .toList();
            List<PlannedPage> pages = PagePlan.onPaper(
                            paper, scale, List.of(LayoutDrawing.of(layout, typeface)), legend)
                    .pages();
            for (int i = 0; i < pages.size(); i++) {
                pages.get(i).draw(document, typeface, i + 1, pages.size(), heading, scale);
            }
        });
    }
}
