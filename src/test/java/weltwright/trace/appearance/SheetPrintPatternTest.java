package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.units.PrintScale;

/** Square by square against the sheet's own description. */
class SheetPrintPatternTest {
    private static final ReferenceSheet SHEET = ReferenceSheet.A4;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void isBlackInBlackSquaresPlainBetweenLinesAndKnowsItsLines() {
        Point corner = new Point(SHEET.pageWidthMm() / 2, SHEET.pageHeightMm() / 2);
        PlaneRaster raster =
                PlaneRaster.covering(corner.times(-1).minus(new Point(5, 5)), corner.plus(new Point(5, 5)), 0.25);
        try (PrintPattern pattern = SheetPrintPattern.of(SHEET, PrintScale.TRUE, raster)) {
            Point half = new Point(SHEET.squareMm() / 2, -SHEET.squareMm() / 2);
            for (int row = 0; row < SHEET.squaresDown(); row++) {
                for (int column = 0; column < SHEET.squaresAcross(); column++) {
                    Point middle = SHEET.gridPoint(column, row).plus(half);
                    if (!SHEET.isPrinted(column, row)) {
                        assertThat(at(pattern.paper(), raster, middle)).isEqualTo(255);
                        assertThat(pattern.printAt(middle)).isEqualTo(GroundPrint.NONE);
                    } else if (SHEET.isBlack(column, row)) {
                        assertThat(at(pattern.black(), raster, middle)).isEqualTo(255);
                        assertThat(at(pattern.paper(), raster, middle)).isZero();
                        Point edge = SHEET.gridPoint(column, row).plus(new Point(half.x(), 0));
                        assertThat(pattern.printAt(edge)).isEqualTo(GroundPrint.BLACK);
                        assertThat(at(pattern.black(), raster, edge)).isZero();
                    }
                }
            }
            assertThat(at(pattern.paper(), raster, corner.plus(new Point(3, 3))))
                    .as("beside the page")
                    .isZero();
        }
    }

    @Test
    void linesRunRoundAndThroughTheWorkingArea() {
        int across = SHEET.squaresAcross() - 2 * ReferenceSheet.FRAME_SQUARES;
        int down = SHEET.squaresDown() - 2 * ReferenceSheet.FRAME_SQUARES;
        var lines = SheetPrintPattern.lines(SHEET, PrintScale.TRUE);
        assertThat(lines).hasSize(across + 1 + down + 1);
        assertThat(lines.stream().mapToDouble(Polyline::lengthMm).sum())
                .isEqualTo(SHEET.squareMm() * ((across + 1) * down + (down + 1) * across));
    }

    private static double at(org.opencv.core.Mat mask, PlaneRaster raster, Point place) {
        Point px = raster.pixel(place);
        return mask.get((int) Math.round(px.y()), (int) Math.round(px.x()))[0];
    }
}
