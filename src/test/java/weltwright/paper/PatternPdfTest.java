package weltwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.awt.print.PageFormat;
import java.awt.print.Printable;
import java.awt.print.PrinterException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.bench.BenchPlan;
import weltwright.bench.Edge;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.knife.TestKnives;
import weltwright.measure.PrintScale;
import weltwright.sheath.Hole;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.Piece;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

/** Patterns printed and read back: from the path operators of the PDF, and from a rendering at 300 dpi. */
class PatternPdfTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    @TempDir
    static Path folder;

    /** A pattern, what it is printed on, and the printer that it is corrected for. */
    record Print(String name, Pattern pattern, PaperSize paper, PrintScale printer) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Print> prints() {
        return List.of(
                new Print("small on A4", SamplePatterns.small(), PaperSize.A4, PrintScale.TRUE),
                new Print("large on A4", SamplePatterns.large(), PaperSize.A4, PrintScale.TRUE),
                new Print("small on Letter, corrected", SamplePatterns.small(), PaperSize.LETTER, new PrintScale(
                        0.961, 0.972)),
                new Print("large on Letter, corrected", SamplePatterns.large(), PaperSize.LETTER, new PrintScale(
                        1.013, 0.987)),
                new Print("a folded sheath on A4", sewn(SheathKind.FOLDED), PaperSize.A4, PrintScale.TRUE),
                new Print("panels on Letter, corrected", sewn(SheathKind.PANELS), PaperSize.LETTER, new PrintScale(
                        0.983, 0.99)),
                new Print("large on one page", SamplePatterns.large(), PaperSize.ONE_LARGE_PAGE, PrintScale.TRUE));
    }

    /** A pattern as it is made for a knife. */
    private static Pattern sewn(SheathKind kind) {
        return PatternMaker.make(TestKnives.leaf(), SheathSpec.standard(kind));
    }

    /** ISO 216 for A4; ANSI/ASME Y14.1 for Letter, 8.5 in by 11 in of 25.4 mm. */
    @ParameterizedTest
    @CsvSource({"A4, 210, 297", "LETTER, 215.9, 279.4"})
    void pagesHaveTheirStandardSize(PaperSize paper, double widthMm, double heightMm) throws IOException {
        for (PageDrawing page : read(new Print("large on " + paper, SamplePatterns.large(), paper, PrintScale.TRUE))) {
            assertThat(page.widthMm()).isEqualTo(widthMm, within(0.001));
            assertThat(page.heightMm()).isEqualTo(heightMm, within(0.001));
        }
    }

    /** ISO 216: A2 is 420 mm by 594 mm; the body of 230 mm by 420 mm is too much for A3. */
    @Test
    void oneLargePageIsTheLeastOfTheASeriesThatTakesAll() throws IOException {
        List<PageDrawing> pages = read(
                new Print("large on one page", SamplePatterns.large(), PaperSize.ONE_LARGE_PAGE, PrintScale.TRUE));
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).widthMm()).isEqualTo(420, within(0.001));
        assertThat(pages.get(0).heightMm()).isEqualTo(594, within(0.001));
    }

    @ParameterizedTest
    @MethodSource("prints")
    void theSquareOnEachPageMeasures50MmWithinAPixel(Print print) throws IOException {
        Path file = write(print);
        List<PageDrawing> inFile = PageDrawing.readAll(file, PrintScale.TRUE);
        for (int i = 0; i < inFile.size(); i++) {
            Envelope square = square(inFile.get(i), print.printer());
            BufferedImage image = Rendered.page(file, i);
            // Along a row and a column of pixels that cross the square where it has no words: just inside its rim.
            double row = square.getMinY() + 1;
            double column = square.getMinX() + 1;
            double across = darkAcross(image, inFile.get(i), square.getMaxX(), row, true)
                    - darkAcross(image, inFile.get(i), square.getMinX(), row, true);
            double up = darkAcross(image, inFile.get(i), square.getMaxY(), column, false)
                    - darkAcross(image, inFile.get(i), square.getMinY(), column, false);
            double pixel = 1 / Rendered.PX_PER_MM;
            assertThat(across * print.printer().x()).isEqualTo(50.00, within(pixel));
            assertThat(up * print.printer().y()).isEqualTo(50.00, within(pixel));
        }
    }

    @ParameterizedTest
    @MethodSource("prints")
    void everyHoleIsWhereTheGeometrySaysOnSomePage(Print print) throws IOException {
        List<PageDrawing> pages = read(print);
        for (Piece piece : print.pattern().pieces()) {
            List<Hole> seen = new ArrayList<>();
            for (PageDrawing page : pages) {
                for (Shown shown : shown(piece, page)) {
                    for (Hole hole : piece.holes()) {
                        Point at = shown.placement().apply(hole.centre());
                        if (shown.window().contains(at.coordinate())) {
                            assertThat(page.strokes())
                                    .as("a circle for %s of %s at %s", hole, piece.name(), at)
                                    .anyMatch(line -> line.isCircle(hole.diameterMm())
                                            && line.centre().distance(at) < 0.1);
                            seen.add(hole);
                        }
                    }
                }
            }
            assertThat(seen).as("holes of %s", piece.name()).containsAll(piece.holes());
        }
    }

    @ParameterizedTest
    @MethodSource("prints")
    void everyPieceIsComplete(Print print) throws IOException {
        List<PageDrawing> pages = read(print);
        for (Piece piece : print.pattern().pieces()) {
            Geometry shownArea = JTS.createPolygon();
            for (PageDrawing page : pages) {
                for (Shown shown : shown(piece, page)) {
                    shownArea = shownArea.union(inPiece(shown).buffer(1e-6));
                }
            }
            assertThat(shownArea.covers(piece.outline().polygon())).as(piece.name()).isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("prints")
    void onlyAPieceThatIsLargerThanThePageIsCut(Print print) throws IOException {
        List<PageDrawing> pages = read(print);
        for (Piece piece : print.pattern().pieces()) {
            Envelope box = piece.outline().lineString().getEnvelopeInternal();
            long onPages = pages.stream().filter(page -> !shown(piece, page).isEmpty()).count();
            boolean fits = box.getHeight() < pages.get(0).heightMm() - 70;
            if (fits) {
                assertThat(onPages).as(piece.name()).isEqualTo(1);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("prints")
    void neighbouringPagesOverlapBy10MmAndTheirRegisterMarksCoincide(Print print) throws IOException {
        List<PageDrawing> pages = read(print);
        for (Piece piece : print.pattern().pieces()) {
            List<PageDrawing> showing =
                    pages.stream().filter(page -> !shown(piece, page).isEmpty()).toList();
            if (showing.size() == 1) {
                continue;
            }
            int joins = 0;
            for (PageDrawing one : showing) {
                for (PageDrawing other : showing) {
                    Geometry overlap = inPiece(shown(piece, one).get(0))
                            .intersection(inPiece(shown(piece, other).get(0)));
                    Envelope box = overlap.getEnvelopeInternal();
                    boolean neighbours = one != other && Math.max(box.getWidth(), box.getHeight()) > 20;
                    if (neighbours) {
                        joins++;
                        assertThat(Math.min(box.getWidth(), box.getHeight())).isEqualTo(10, within(0.01));
                        List<Point> marks = registerMarks(piece, one).stream()
                                .filter(at -> box.contains(at.coordinate()))
                                .toList();
                        assertThat(marks).hasSizeGreaterThanOrEqualTo(2);
                        assertThat(marks).allSatisfy(at -> {
                            assertThat(registerMarks(piece, other)).anyMatch(partner -> partner.distance(at) < 0.01);
                            assertThat(piece.holes()).as("no hole is taken for a mark").allSatisfy(hole ->
                                    assertThat(hole.centre().distance(at)).isGreaterThan(4));
                        });
                    }
                }
            }
            assertThat(joins).as("pages that join, counted from both sides").isGreaterThanOrEqualTo(2);
        }
    }

    @ParameterizedTest
    @MethodSource("prints")
    void nothingIsDrawnWhereAPrinterCannotPrint(Print print) throws IOException {
        Path file = write(print);
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

    @ParameterizedTest
    @MethodSource("prints")
    void piecesDoNotLieOnEachOther(Print print) throws IOException {
        for (PageDrawing page : read(print)) {
            List<Geometry> areas = new ArrayList<>();
            for (Piece piece : print.pattern().pieces()) {
                for (Shown shown : shown(piece, page)) {
                    Geometry area = piece.outline().map(shown.placement()::apply).polygon();
                    areas.add(OverlayNGRobust.overlay(
                            area, JTS.toGeometry(shown.window()), OverlayNG.INTERSECTION));
                }
            }
            areas.add(JTS.toGeometry(square(page, PrintScale.TRUE)));
            for (int i = 0; i < areas.size(); i++) {
                for (int j = 0; j < i; j++) {
                    assertThat(areas.get(i).intersects(areas.get(j))).isFalse();
                }
            }
        }
    }

    /** 1 in = 25.4 mm. */
    @ParameterizedTest
    @MethodSource("prints")
    void bothBarsAreTrueInMillimetresAndInches(Print print) throws IOException {
        for (PageDrawing page : read(print)) {
            Envelope square = square(page, PrintScale.TRUE);
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
    @MethodSource("prints")
    void everyPageSaysWhatItIsAndHowToPrintIt(Print print) throws IOException {
        List<String> pages = words(write(print));
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i))
                    .contains("50 mm each way")
                    .contains("Print at 100 %")
                    .contains("Page " + (i + 1) + " of " + pages.size())
                    .contains("Ylva Bräntholm")
                    .contains("Drop point, 105 mm")
                    .contains("2024-03-09");
        }
        String all = String.join("\n", pages);
        assertThat(all)
                .contains("What the lines mean")
                .contains("Take care")
                .contains("Tape the blade")
                .contains("over a soft surface")
                .contains("law on carrying knives")
                .contains("Likes a dark brown edge");
        for (Piece piece : print.pattern().pieces()) {
            assertThat(all).contains("%s: cut %d from leather of %s mm"
                    .formatted(piece.name(), piece.count(), PieceDrawing.millimetres(piece.thicknessMm())));
        }
        if (!print.printer().equals(PrintScale.TRUE)) {
            assertThat(pages).allSatisfy(page -> assertThat(page).contains("Corrected for a printer"));
        }
    }

    @Test
    void aPartOfALargePieceTellsItsPlace() throws IOException {
        List<String> pages = words(write(prints().get(1)));
        assertThat(String.join("\n", pages))
                .contains("body (cut 1): page A1")
                .contains("body (cut 1): page A2")
                .contains("body (cut 1): page B1")
                .contains("body (cut 1): page B2");
    }

    /** People paste whole letters into a field for notes. */
    @Test
    void longNotesAndNamesArePrintedOverAsManyPagesAsTheyTake() throws IOException {
        String notes = IntStream.range(0, 3000).mapToObj(i -> "word" + i).collect(Collectors.joining(" "));
        Heading heading = new Heading(
                "A name that is long ".repeat(20), "x".repeat(500), LocalDate.of(2024, 3, 9), notes);
        Path file = folder.resolve("long.pdf");
        PatternPdf.write(SamplePatterns.small(), heading, PaperSize.LETTER, new PrintScale(0.9, 0.9), file);
        assertThat(String.join(" ", words(file))).contains("word0 ").contains("word1500 ").contains("word2999");
    }

    /** Letters that the typeface lacks must not stop the print: here Chinese and a picture, and a control character. */
    @Test
    void namesInAnyScriptArePrintedAsFarAsTheTypefaceGoes() throws IOException {
        Heading heading = new Heading(
                "Łukasz Žižka Ωμέγα Юрий 李", "\uD83D\uDD2A\u0007", LocalDate.of(2024, 3, 9), "a\tb\n\nc");
        Path file = folder.resolve("scripts.pdf");
        PatternPdf.write(SamplePatterns.small(), heading, PaperSize.A4, PrintScale.TRUE, file);
        assertThat(words(file).get(0)).contains("Łukasz Žižka Ωμέγα Юрий ?");
    }

    @ParameterizedTest
    @MethodSource("prints")
    void noLineRunsThroughTheWordsOnAPiece(Print print) throws IOException {
        try (PDDocument document = new PDDocument()) {
            Lettering lettering = Lettering.in(document);
            for (Piece piece : print.pattern().pieces()) {
                List<Edge> edges = BenchPlan.of(print.pattern()).edges().stream()
                        .filter(edge -> edge.piece().equals(piece.name()))
                        .toList();
                PieceDrawing drawing = PieceDrawing.of(piece, edges, lettering);
                assertThat(drawing.labels()).isNotEmpty();
                for (Label label : drawing.labels()) {
                    assertThat(drawing.lines().intersects(label.box()))
                            .as("%s on %s", label.lines(), piece.name())
                            .isFalse();
                }
            }
        }
    }

    @Test
    void kindsOfLineAreToldApartInBlackAndWhite() {
        // The notch and the ends of a stitch row are the same stroke, told apart by what they stand on.
        assertThat(EnumSet.complementOf(EnumSet.of(LineStyle.STITCH_END)))
                .extracting(style -> List.of(style.pen().widthMm(), style.pen().dashesMm()))
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @EnumSource(names = {"A4", "LETTER"})
    void printedPagesKeepTheirActualSize(PaperSize paper) throws IOException, PrinterException {
        BenchPlan plan = BenchPlan.of(SamplePatterns.small());
        try (PrintPages pages = PatternPdf.pages(
                SamplePatterns.small(), plan, SamplePatterns.HEADING, paper, PrintScale.TRUE)) {
            PageFormat format = pages.getPageFormat(0);
            // Java prints in points of 1/72 in, too.
            assertThat(format.getWidth() * 25.4 / 72).isEqualTo(paper == PaperSize.A4 ? 210 : 215.9, within(0.001));
            BufferedImage paperImage = new BufferedImage(
                    (int) Math.ceil(format.getWidth() * Rendered.DPI / 72),
                    (int) Math.ceil(format.getHeight() * Rendered.DPI / 72),
                    BufferedImage.TYPE_BYTE_GRAY);
            var graphics = paperImage.createGraphics();
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, paperImage.getWidth(), paperImage.getHeight());
            graphics.scale(Rendered.DPI / 72.0, Rendered.DPI / 72.0);
            assertThat(pages.getPrintable(0).print(graphics, format, 0)).isEqualTo(Printable.PAGE_EXISTS);
            graphics.dispose();

            Print print = new Print("small on " + paper, SamplePatterns.small(), paper, PrintScale.TRUE);
            PageDrawing inFile = read(print).get(0);
            Envelope square = square(inFile, PrintScale.TRUE);
            double row = square.getMinY() + 1;
            double across = darkAcross(paperImage, inFile, square.getMaxX(), row, true)
                    - darkAcross(paperImage, inFile, square.getMinX(), row, true);
            assertThat(across).isEqualTo(50.00, within(1 / Rendered.PX_PER_MM));
        }
    }

    /**
     * A piece, or a part of it, as a page shows it.
     *
     * @param placement from the piece's frame to the paper
     * @param window outside which it does not show
     */
    private record Shown(Placement placement, Envelope window) {}

    /** Finds a piece on a page by its outline: the same corners in the same order, moved, neither bent nor scaled. */
    private static List<Shown> shown(Piece piece, PageDrawing page) {
        List<Point> outline = piece.outline().points();
        List<Shown> found = new ArrayList<>();
        for (PageDrawing.Line line : page.strokes()) {
            if (line.points().size() != outline.size() + 1) {
                continue;
            }
            int far = 0;
            for (int i = 1; i < outline.size(); i++) {
                if (outline.get(i).distance(outline.get(0)) > outline.get(far).distance(outline.get(0))) {
                    far = i;
                }
            }
            Point drawn = line.points().get(far).minus(line.points().get(0));
            Point ours = outline.get(far).minus(outline.get(0));
            double angle = Math.atan2(ours.cross(drawn), ours.dot(drawn));
            Point turned = new Placement(angle, new Point(0, 0)).rotate(outline.get(0));
            Placement placement = new Placement(angle, line.points().get(0).minus(turned));
            boolean same = true;
            for (int i = 0; i < outline.size(); i++) {
                same &= placement.apply(outline.get(i)).distance(line.points().get(i)) < 0.01;
            }
            if (same) {
                found.add(new Shown(placement, line.clip()));
            }
        }
        return found;
    }

    /** The window in the piece's frame. */
    private static Geometry inPiece(Shown shown) {
        Envelope w = shown.window();
        return Ink.box(new Point(w.getMinX(), w.getMinY()), new Point(w.getMaxX(), w.getMaxY()))
                .map(shown.placement().inverse()::apply)
                .polygon();
    }

    /** Centres of the circles of register marks, in the piece's frame. */
    private static List<Point> registerMarks(Piece piece, PageDrawing page) {
        Placement back = shown(piece, page).get(0).placement().inverse();
        return page.strokes().stream()
                .filter(line -> line.isCircle(5))
                .map(line -> back.apply(line.centre()))
                .toList();
    }

    /** The one square of 50 mm that is stroked on a page. */
    private static Envelope square(PageDrawing page, PrintScale fileIsFor) {
        List<Envelope> squares = page.strokes().stream()
                .filter(line -> line.points().size() == 5)
                .map(PageDrawing.Line::box)
                .filter(box -> Math.abs(box.getWidth() * fileIsFor.x() - 50) < 0.01
                        && Math.abs(box.getHeight() * fileIsFor.y() - 50) < 0.01)
                .toList();
        assertThat(squares).hasSize(1);
        return squares.get(0);
    }

    /** Where a line lies that is crossed near {@code nearMm}: the centre of darkness of the pixels about it, in mm. */
    private static double darkAcross(
            BufferedImage image, PageDrawing page, double nearMm, double alongMm, boolean alongRow) {
        double nearPx = alongRow ? nearMm * Rendered.PX_PER_MM : (page.heightMm() - nearMm) * Rendered.PX_PER_MM;
        int line = (int)
                ((alongRow ? page.heightMm() - alongMm : alongMm) * Rendered.PX_PER_MM);
        double dark = 0;
        double moment = 0;
        for (int i = (int) nearPx - 6; i <= (int) nearPx + 6; i++) {
            int grey = alongRow ? image.getRaster().getSample(i, line, 0) : image.getRaster().getSample(line, i, 0);
            dark += 255 - grey;
            moment += (255 - grey) * (i + 0.5);
        }
        assertThat(dark).as("ink near %.1f mm", nearMm).isGreaterThan(255);
        double mm = moment / dark / Rendered.PX_PER_MM;
        return alongRow ? mm : page.heightMm() - mm;
    }

    private static void assertHasTick(List<Double> bar, double at) {
        assertThat(bar).as("a tick at %.1f mm", at).anyMatch(tick -> Math.abs(tick - at) < 0.005);
    }

    private static List<String> words(Path file) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                // Lines are broken to fit; words are looked for across the breaks.
                pages.add(stripper.getText(document).replaceAll("[\\s\\u00a0]+", " "));
            }
        }
        return pages;
    }

    private static List<PageDrawing> read(Print print) throws IOException {
        return PageDrawing.readAll(write(print), print.printer());
    }

    /** The print's file, written when it is first asked for. */
    private static Path write(Print print) {
        Path file = folder.resolve(print.name() + ".pdf");
        if (!Files.exists(file)) {
            PatternPdf.write(print.pattern(), SamplePatterns.HEADING, print.paper(), print.printer(), file);
        }
        return file;
    }
}
