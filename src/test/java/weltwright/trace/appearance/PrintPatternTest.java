package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** A pattern of four by four pixels of 1 mm: plain on the left, a line in the third column, black in the last. */
class PrintPatternTest {
    private static final PlaneRaster RASTER = new PlaneRaster(new Point(10, 20), 1, 4, 4);

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    private static Mat mask(int... set) {
        Mat mask = new Mat(4, 4, CvType.CV_8U);
        byte[] row = new byte[4];
        for (int column : set) {
            row[column] = (byte) 255;
        }
        for (int y = 0; y < 4; y++) {
            mask.put(y, 0, row);
        }
        return mask;
    }

    private static PrintPattern pattern() {
        byte[] prints = new byte[16];
        for (int y = 0; y < 4; y++) {
            prints[4 * y + 2] = (byte) GroundPrint.LINE.code();
            prints[4 * y + 3] = (byte) GroundPrint.BLACK.code();
        }
        return new PrintPattern(RASTER, mask(0, 1), mask(3), prints);
    }

    @Test
    void tellsWhatIsPrintedAtAPlaceEvenOnceItsMasksAreGone() {
        PrintPattern pattern = pattern();
        pattern.close();
        assertThat(pattern.printAt(new Point(10.4, 17.2))).isEqualTo(GroundPrint.NONE);
        assertThat(pattern.printAt(new Point(12.4, 17.2))).isEqualTo(GroundPrint.LINE);
        assertThat(pattern.printAt(new Point(13.4, 20.4))).isEqualTo(GroundPrint.BLACK);
        assertThat(pattern.printAt(new Point(14, 20))).as("beyond the raster").isEqualTo(GroundPrint.NONE);
    }

    /** A pixel for four is plain or black only where more than half of the four are. */
    @Test
    void halvedItKeepsWhatIsPlainAllOver() {
        try (PrintPattern half = pattern().halved()) {
            assertThat(half.raster().columns()).isEqualTo(2);
            assertThat(half.paper().get(1, 0)[0]).isEqualTo(255);
            assertThat(half.paper().get(1, 1)[0]).isZero();
            assertThat(half.printAt(new Point(12.5, 19.5))).isEqualTo(GroundPrint.LINE);
        }
    }

    @Test
    void someOfItsRowsLieWhereTheyLay() {
        try (PrintPattern rows = pattern().rows(1, 3)) {
            assertThat(rows.raster().rows()).isEqualTo(2);
            assertThat(rows.raster().pointAt(0, 0)).isEqualTo(new Point(10, 19));
            assertThat(rows.printAt(new Point(12, 18))).isEqualTo(GroundPrint.LINE);
            assertThat(rows.printAt(new Point(12, 17))).isEqualTo(GroundPrint.NONE);
            assertThat(rows.black().get(1, 3)[0]).isEqualTo(255);
        }
    }
}
