package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.assembly.AssemblyPlan;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.output.PageFrame;
import weltwright.output.PaperSize;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.SheathKind;
import weltwright.units.PrintScale;

/** Which page shows what. */
class PagePlanTest {
    @TempDir
    static Path folder;

    static Stream<PrintedPattern> printed() {
        return Stream.of(SheathKind.values())
                .flatMap(kind -> Stream.of(PaperSize.A4, PaperSize.LETTER)
                        .map(paper -> new PrintedPattern(
                                kind + " on " + paper, PrintedPattern.sewn(kind), paper, PrintScale.TRUE)));
    }

    /** Whoever prints the pattern measures the square and learns the lines before he cuts the first piece. */
    @ParameterizedTest
    @MethodSource("printed")
    void theFirstPageSaysWhatTheLinesMeanAndHowTheScaleIsChecked(PrintedPattern print) throws IOException {
        Path file = folder.resolve(print.name() + " with card.pdf");
        PatternPdf.write(
                print.pattern(),
                AssemblyPlan.of(print.pattern()),
                SamplePatterns.HEADING,
                print.paper(),
                print.printer(),
                file);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            assertThat(first.getText(document))
                    .contains("What the lines mean", "50 mm each way", "not \"fit to page\"", "both ways")
                    .contains("Page 1 of " + document.getNumberOfPages());
        }
        List<PageDrawing> pages = PageDrawing.readAll(file, print.printer());
        List<PageDrawing> ofPattern = pages.stream()
                .filter(page -> page.strokes().stream()
                        .anyMatch(line -> line.points().size() == 5
                                && Math.abs(line.box().getWidth() - 50) < 0.01
                                && Math.abs(line.box().getHeight() - 50) < 0.01))
                .toList();
        assertThat(ofPattern)
                .as("pages with a piece, of those with a square")
                .allMatch(page -> print.pattern().pieces().stream()
                        .anyMatch(piece -> !ShownPiece.on(page, piece).isEmpty()));
    }

    /** What the pieces take by themselves: the legend fills gaps between them. */
    @ParameterizedTest
    @MethodSource("printed")
    void theLegendTakesNoPage(PrintedPattern print) throws IOException {
        AssemblyPlan bench = AssemblyPlan.of(print.pattern());
        try (PDDocument document = new PDDocument()) {
            PdfTypeface typeface = PdfTypeface.in(document);
            List<PieceDrawing> pieces = print.pattern().pieces().stream()
                    .map(piece -> PieceDrawing.of(
                            piece,
                            bench.edgesOf(piece),
                            PieceCaption.of(print.pattern(), piece, SamplePatterns.HEADING),
                            typeface))
                    .toList();
            PageFrame frame = print.paper().frame(PrintScale.TRUE);
            List<List<LegendBlock>> legend = LegendBlock.ways(typeface, List.of(LineStyle.values()));
            assertThat(PagePlan.of(frame, pieces, legend).pages())
                    .hasSameSizeAs(PagePlan.of(frame, pieces, List.of()).pages());
        }
    }

    /** A4 takes a strip of 285 mm by 40 mm along its diagonal alone: 279 mm are printable along its side. */
    @Test
    void aWideStrapIsTurnedRatherThanCut() {
        List<PlannedPage> pages = plan(PaperSize.A4, strip(285, 40)).pages();
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).tile()).isEmpty();
        assertThat(Math.abs(
                        Math.sin(2 * pages.get(0).pieces().get(0).placement().angleRad())))
                .isGreaterThan(0.1);
    }

    @Test
    void piecesShareAPageWhereTheyFit() {
        assertThat(plan(PaperSize.A4, strip(200, 55), strip(200, 55), strip(180, 20))
                        .pages())
                .hasSize(1);
    }

    /** ISO 216; ANSI/ASME Y14.1 for tabloid, 11 in by 17 in. */
    @ParameterizedTest
    @CsvSource({"A3, 297, 420", "TABLOID, 279.4, 431.8"})
    void largerPaperTakesWhatWouldBeCutOnSmaller(PaperSize paper, double widthMm, double heightMm) {
        PagePlan plan = plan(paper, strip(400, 40));
        assertThat(plan.hasTiles()).isFalse();
        assertThat(plan.pages().get(0).frame().widthMm()).isEqualTo(widthMm);
        assertThat(plan.pages().get(0).frame().heightMm()).isEqualTo(heightMm);
        assertThat(plan(PaperSize.A4, strip(400, 40)).hasTiles()).isTrue();
    }

    private static PagePlan plan(PaperSize paper, PieceDrawing... pieces) {
        return PagePlan.of(paper.frame(PrintScale.TRUE), List.of(pieces), List.of());
    }

    private static PieceDrawing strip(double lengthMm, double widthMm) {
        Polyline outline = PdfCanvas.box(new Point(0, 0), new Point(lengthMm, widthMm));
        Piece piece = new Piece(Piece.Kind.BELT_STRAP, 1, 3, outline, List.of(), List.of());
        return new PieceDrawing(piece, List.of(), List.of(), outline.polygon());
    }
}
