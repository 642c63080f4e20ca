package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.awt.print.PageFormat;
import java.awt.print.Printable;
import java.awt.print.PrinterException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Envelope;
import weltwright.assembly.AssemblyPlan;
import weltwright.output.PaperSize;
import weltwright.output.pdf.PrintPages;
import weltwright.units.PrintScale;

/**
 * Pages of a pattern read back, from the path operators of the PDF and from a rendering at 300 dpi: are they true to
 * size?
 */
class PatternPdfTest {
    @TempDir
    static Path folder;

    /** ISO 216 for A4 and A3; ANSI/ASME Y14.1 for Letter, 8.5 in by 11 in of 25.4 mm, and tabloid, 11 in by 17 in. */
    @ParameterizedTest
    @CsvSource({"A4, 210, 297", "LETTER, 215.9, 279.4", "A3, 297, 420", "TABLOID, 279.4, 431.8"})
    void pagesHaveTheirStandardSize(PaperSize paper, double widthMm, double heightMm) throws IOException {
        PrintedPattern large = new PrintedPattern("large on " + paper, SamplePatterns.large(), paper, PrintScale.TRUE);
        for (PageDrawing page : large.read(folder)) {
            assertThat(page.widthMm()).isEqualTo(widthMm, within(0.001));
            assertThat(page.heightMm()).isEqualTo(heightMm, within(0.001));
        }
    }

    /** ISO 216: A2 is 420 mm by 594 mm; the body of 230 mm by 420 mm is too much for A3. */
    @Test
    void oneLargePageIsTheLeastOfTheASeriesThatTakesAll() throws IOException {
        PrintedPattern large = new PrintedPattern(
                "large on one page", SamplePatterns.large(), PaperSize.ONE_LARGE_PAGE, PrintScale.TRUE);
        List<PageDrawing> pages = large.read(folder);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).widthMm()).isEqualTo(420, within(0.001));
        assertThat(pages.get(0).heightMm()).isEqualTo(594, within(0.001));
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void theSquareOnEachPageMeasures50MmWithinAPixel(PrintedPattern print) throws IOException {
        Path file = print.write(folder);
        List<PageDrawing> inFile = PageDrawing.readAll(file, PrintScale.TRUE);
        for (int i = 0; i < inFile.size(); i++) {
            Envelope square = PrintedPattern.checkSquare(inFile.get(i), print.printer());
            BufferedImage image = RenderedPage.page(file, i);
            // Along a row and a column of pixels that cross the square where it has no words: just inside its rim.
            double row = square.getMinY() + 1;
            double column = square.getMinX() + 1;
            double across = darkAcross(image, inFile.get(i), square.getMaxX(), row, true)
                    - darkAcross(image, inFile.get(i), square.getMinX(), row, true);
            double up = darkAcross(image, inFile.get(i), square.getMaxY(), column, false)
                    - darkAcross(image, inFile.get(i), square.getMinY(), column, false);
            double pixel = 1 / RenderedPage.PX_PER_MM;
            assertThat(across * print.printer().x()).isEqualTo(50.00, within(pixel));
            assertThat(up * print.printer().y()).isEqualTo(50.00, within(pixel));
        }
    }

    /** 1 in = 25.4 mm. */
    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void bothBarsAreTrueInMillimetresAndInches(PrintedPattern print) throws IOException {
        for (PageDrawing page : print.read(folder)) {
            Envelope square = PrintedPattern.checkSquare(page, PrintScale.TRUE);
            List<Envelope> ticks = page.strokes().stream()
                    .filter(line -> line.points().size() == 2 && line.dashes() == 0)
                    .map(PageDrawing.Line::box)
                    .toList();
            List<Double> across = ticks.stream()
                    .filter(tick -> tick.getWidth() < 1e-3 && tick.getHeight() < 3 && tick.getMaxY() < square.getMinY())
                    .map(tick -> tick.getMinX() - square.getMinX())
                    .toList();
            List<Double> up = ticks.stream()
                    .filter(tick -> tick.getHeight() < 1e-3 && tick.getWidth() < 3 && tick.getMaxX() < square.getMinX())
                    .map(tick -> tick.getMinY() - square.getMinY())
                    .toList();
            for (List<Double> bar : List.of(across, up)) {
                for (int mm = 0; mm <= 150; mm++) {
                    assertHasTick(bar, mm);
                }
                for (int inch = 0; inch <= 6; inch++) {
                    assertHasTick(bar, inch * 25.4);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void nothingIsDrawnWhereAPrinterCannotPrint(PrintedPattern print) throws IOException {
        Path file = print.write(folder);
        for (PrintScale printer : List.of(PrintScale.TRUE, print.printer())) {
            for (PageDrawing page : PageDrawing.readAll(file, printer)) {
                Envelope printable = new Envelope(8, page.widthMm() - 8, 8, page.heightMm() - 8);
                assertThat(page.strokes().stream()
                                .map(line -> line.box().intersection(line.clip()))
                                .filter(shows -> !shows.isNull() && !printable.contains(shows)))
                        .isEmpty();
            }
        }
    }

    @Test
    void kindsOfLineAreToldApartInBlackAndWhite() {
        // Told apart by what they stand on: the notch and the ends of a stitch row, and the iron's tooth. By their
        // shape: the
        // circle of a hole, the arrow of the stretch, the row with its holes.
        assertThat(EnumSet.complementOf(
                        EnumSet.of(LineStyle.STITCH_END, LineStyle.IRON, LineStyle.HOLE, LineStyle.GRAIN)))
                .extracting(style ->
                        List.of(style.stroke().widthMm(), style.stroke().dashesMm()))
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @EnumSource(names = {"A4", "LETTER"})
    void printedPagesKeepTheirActualSize(PaperSize paper) throws IOException, PrinterException {
        AssemblyPlan plan = AssemblyPlan.of(SamplePatterns.small());
        PatternDocument document = PatternPdf.document(
                SamplePatterns.small(), plan, Optional.empty(), SamplePatterns.HEADING, paper, PrintScale.TRUE);
        try (PrintPages pages = new PrintPages(document.pages().bytes())) {
            PageFormat format = pages.getPageFormat(0);
            // Java prints in points of 1/72 in, too.
            assertThat(format.getWidth() * 25.4 / 72).isEqualTo(paper == PaperSize.A4 ? 210 : 215.9, within(0.001));
            BufferedImage paperImage = new BufferedImage(
                    (int) Math.ceil(format.getWidth() * RenderedPage.DPI / 72),
                    (int) Math.ceil(format.getHeight() * RenderedPage.DPI / 72),
                    BufferedImage.TYPE_BYTE_GRAY);
            var graphics = paperImage.createGraphics();
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, paperImage.getWidth(), paperImage.getHeight());
            graphics.scale(RenderedPage.DPI / 72.0, RenderedPage.DPI / 72.0);
            assertThat(pages.getPrintable(0).print(graphics, format, 0)).isEqualTo(Printable.PAGE_EXISTS);
            graphics.dispose();

            PrintedPattern print =
                    new PrintedPattern("small on " + paper, SamplePatterns.small(), paper, PrintScale.TRUE);
            PageDrawing inFile = print.read(folder).get(0);
            Envelope square = PrintedPattern.checkSquare(inFile, PrintScale.TRUE);
            double row = square.getMinY() + 1;
            double across = darkAcross(paperImage, inFile, square.getMaxX(), row, true)
                    - darkAcross(paperImage, inFile, square.getMinX(), row, true);
            assertThat(across).isEqualTo(50.00, within(1 / RenderedPage.PX_PER_MM));
        }
    }

    /** Where a line lies that is crossed near {@code nearMm}: the centre of darkness of the pixels about it, in mm. */
    private static double darkAcross(
            BufferedImage image, PageDrawing page, double nearMm, double alongMm, boolean alongRow) {
        double nearPx =
                alongRow ? nearMm * RenderedPage.PX_PER_MM : (page.heightMm() - nearMm) * RenderedPage.PX_PER_MM;
        int line = (int) ((alongRow ? page.heightMm() - alongMm : alongMm) * RenderedPage.PX_PER_MM);
        double dark = 0;
        double moment = 0;
        for (int i = (int) nearPx - 6; i <= (int) nearPx + 6; i++) {
            int grey = alongRow
                    ? image.getRaster().getSample(i, line, 0)
                    : image.getRaster().getSample(line, i, 0);
            dark += 255 - grey;
            moment += (255 - grey) * (i + 0.5);
        }
        assertThat(dark).as("ink near %.1f mm", nearMm).isGreaterThan(255);
        double mm = moment / dark / RenderedPage.PX_PER_MM;
        return alongRow ? mm : page.heightMm() - mm;
    }

    private static void assertHasTick(List<Double> bar, double at) {
        assertThat(bar).as("a tick at %.1f mm", at).anyMatch(tick -> Math.abs(tick - at) < 0.005);
    }
}
