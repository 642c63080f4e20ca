package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.javacpp.indexer.IntIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_objdetect;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.MatVector;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_objdetect.CharucoBoard;
import org.bytedeco.opencv.opencv_objdetect.CharucoDetector;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.opencv.OpenCvLibraries;

/** The sheet as it comes out of a printer, read by OpenCV's own detector. */
class SheetPdfTest {
    @TempDir
    Path folder;

    /** ISO 216 for A4 and A3; ANSI/ASME Y14.1 for Letter and Tabloid, 1 in = 25.4 mm and 72 points. */
    @ParameterizedTest
    @CsvSource({"A4, 210, 297", "A3, 297, 420", "LETTER, 215.9, 279.4", "TABLOID, 279.4, 431.8"})
    void thePageHasItsStandardSize(ReferenceSheet sheet, double widthMm, double heightMm) throws IOException {
        try (PDDocument document = Loader.loadPDF(written(sheet).toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            PDRectangle page = document.getPage(0).getMediaBox();
            assertThat(page.getWidth() * 25.4 / 72).isEqualTo(widthMm, within(0.001));
            assertThat(page.getHeight() * 25.4 / 72).isEqualTo(heightMm, within(0.001));
        }
    }

    /**
     * The board is built here from the published table, not from our geometry; OpenCV finds every marker of the frame,
     * and every corner that four printed squares share, within a twentieth of a millimetre.
     */
    @ParameterizedTest
    @CsvSource({
        "A4, 210, 297, 16, 23, 12, 9, 0",
        "LETTER, 215.9, 279.4, 16, 22, 12, 9, 200",
        "A3, 297, 420, 18, 25, 16, 12, 400",
        "TABLOID, 279.4, 431.8, 16, 26, 16, 12, 650"
    })
    void openCvReadsTheWholeFrame(
            ReferenceSheet sheet,
            double widthMm,
            double heightMm,
            int across,
            int down,
            int squareMm,
            int markerMm,
            int firstId)
            throws IOException {
        Found found = detect(RenderedPage.page(written(sheet), 0), across, down, squareMm, markerMm, firstId);

        Set<Integer> printedIds = new HashSet<>();
        int id = firstId;
        for (int row = 0; row < down; row++) {
            for (int column = 0; column < across; column++) {
                if ((row + column) % 2 == 1) {
                    if (row < 2 || column < 2 || row >= down - 2 || column >= across - 2) {
                        printedIds.add(id);
                    }
                    id++;
                }
            }
        }
        assertThat(found.ids()).isEqualTo(printedIds);

        double left = (widthMm - across * squareMm) / 2;
        double top = (heightMm - down * squareMm) / 2;
        for (int row = 1; row < down; row++) {
            for (int column = 1; column < across; column++) {
                if (row == 1 || row == down - 1 || column == 1 || column == across - 1) {
                    Point at = found.corners().get((row - 1) * (across - 1) + column - 1);
                    assertThat(at).as("corner %d, %d", column, row).isNotNull();
                    assertThat(at.distance(new Point(left + column * squareMm, top + row * squareMm)))
                            .as("corner %d, %d", column, row)
                            .isLessThan(0.05);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theBarsAreTrueBothWays(ReferenceSheet sheet) throws IOException {
        PageDrawing drawing = PageDrawing.read(written(sheet), 0);
        // The end lines of the bars are the only hairlines of the page.
        var hairlines =
                drawing.strokes().stream().filter(s -> s.widthMm() < 0.15).toList();
        assertThat(hairlines).hasSize(4);
        var across = hairlines.stream()
                .map(s -> s.box())
                .filter(b -> b.getHeight() > b.getWidth())
                .toList();
        var up = hairlines.stream()
                .map(s -> s.box())
                .filter(b -> b.getWidth() > b.getHeight())
                .toList();
        assertThat(Math.abs(across.get(0).centre().x - across.get(1).centre().x))
                .isEqualTo(100, within(0.001));
        assertThat(Math.abs(up.get(0).centre().y - up.get(1).centre().y)).isEqualTo(100, within(0.001));
    }

    /** One pale line of 0.25 mm along each square's edge inside the frame, from frame to frame. */
    @ParameterizedTest
    @EnumSource
    void thePaleLinesAreOneSquareApartAndUnbroken(ReferenceSheet sheet) throws IOException {
        PageDrawing drawing = PageDrawing.read(written(sheet), 0);
        Point centre = new Point(sheet.pageWidthMm() / 2, sheet.pageHeightMm() / 2);
        double width = sheet.boardWidthMm() - 4 * sheet.squareMm();
        double height = sheet.boardHeightMm() - 4 * sheet.squareMm();
        var lines = drawing.strokes().stream()
                .filter(line -> Math.abs(line.widthMm() - 0.25) < 0.001)
                .toList();
        var upright = lines.stream()
                .filter(line -> Math.abs(line.box().getHeight() - height) < 0.001)
                .map(line -> line.centre().minus(centre))
                .toList();
        var level = lines.stream()
                .filter(line -> Math.abs(line.box().getWidth() - width) < 0.001)
                .map(line -> line.centre().minus(centre))
                .toList();
        assertThat(upright).hasSize(sheet.squaresAcross() - 5);
        assertThat(level).hasSize(sheet.squaresDown() - 5);
        for (int i = 0; i < upright.size(); i++) {
            double x = (i + 1) * sheet.squareMm() - width / 2;
            assertThat(upright).anyMatch(at -> at.distance(new Point(x, 0)) < 0.001);
        }
        for (int i = 0; i < level.size(); i++) {
            double y = (i + 1) * sheet.squareMm() - height / 2;
            assertThat(level).anyMatch(at -> at.distance(new Point(0, y)) < 0.001);
        }
    }

    @ParameterizedTest
    @EnumSource
    void theSheetSaysHowToPhotographInALetteringOfItsOwn(ReferenceSheet sheet) throws IOException {
        try (PDDocument document = Loader.loadPDF(written(sheet).toFile())) {
            // Where words run up the page, the reader of PDFs breaks them into bits.
            String words = new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", "");
            assertThat(words)
                    .contains("straightabove")
                    .contains("zoomin")
                    .contains("Flat,evenlight")
                    .contains("insidetheframe")
                    .contains("actualsize")
                    .contains("100mm");
            var resources = document.getPage(0).getResources();
            for (var name : resources.getFontNames()) {
                PDFont font = resources.getFont(name);
                assertThat(font.isEmbedded()).isTrue();
            }
        }
    }

    private Path written(ReferenceSheet sheet) {
        Path file = folder.resolve(sheet.name() + ".pdf");
        SheetPdf.write(sheet, file);
        return file;
    }

    /**
     * @param corners by OpenCV's corner id, in mm from the page's upper left corner, y down
     * @param ids of all markers seen
     */
    private record Found(Map<Integer, Point> corners, Set<Integer> ids) {}

    private static Found detect(BufferedImage page, int across, int down, int squareMm, int markerMm, int firstId) {
        OpenCvLibraries.load();
        byte[] grey = ((DataBufferByte) page.getRaster().getDataBuffer()).getData();
        int count = across * down / 2;
        try (BytePointer pixels = new BytePointer(grey);
                Mat image = new Mat(page.getHeight(), page.getWidth(), opencv_core.CV_8UC1, pixels);
                Mat ids = new Mat(count, 1, opencv_core.CV_32SC1);
                Mat cornerPlaces = new Mat();
                Mat cornerIds = new Mat();
                MatVector markerPlaces = new MatVector();
                Mat markerIds = new Mat()) {
            try (IntIndexer into = ids.createIndexer()) {
                for (int i = 0; i < count; i++) {
                    into.put(i, 0, firstId + i);
                }
            }
            CharucoBoard board = new CharucoBoard(
                    new Size(across, down),
                    squareMm,
                    markerMm,
                    opencv_objdetect.getPredefinedDictionary(opencv_objdetect.DICT_5X5_1000),
                    ids);
            new CharucoDetector(board).detectBoard(image, cornerPlaces, cornerIds, markerPlaces, markerIds);
            Map<Integer, Point> corners = new HashMap<>();
            Set<Integer> seen = new HashSet<>();
            try (FloatIndexer places = cornerPlaces.createIndexer();
                    IntIndexer cornerId = cornerIds.createIndexer();
                    IntIndexer markerId = markerIds.createIndexer()) {
                for (int i = 0; i < cornerIds.rows(); i++) {
                    // Unlike cornerSubPix, CharucoDetector counts from the upper left corner of the first pixel, not
                    // from its middle: it takes half a pixel off before it refines a corner, and puts it on after.
                    corners.put(
                            cornerId.get(i, 0),
                            new Point(places.get(i, 0, 0), places.get(i, 0, 1)).times(1 / RenderedPage.PX_PER_MM));
                }
                for (int i = 0; i < markerIds.rows(); i++) {
                    seen.add(markerId.get(i, 0));
                }
            }
            return new Found(corners, seen);
        }
    }
}
