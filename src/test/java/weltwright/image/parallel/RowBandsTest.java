package weltwright.image.parallel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.image.opencv.OpenCvLibraries;

/** A blur made in bands against one made of the whole. */
class RowBandsTest {
    private static final int REACH = 7;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** Fewer rows than two bands have, whole bands, and a last one that is a part of one. */
    @ParameterizedTest
    @ValueSource(ints = {50, 192, 288, 500})
    void bandsMakeTheWhole(int rows) {
        Mat from = new Mat(rows, 60, CvType.CV_8U);
        Core.setRNGSeed(3);
        Core.randu(from, 0, 256);
        Mat whole = blurred(from);
        Mat banded = RowBands.of(
                new RowBands.Size(60, rows, CvType.CV_8U), REACH, (low, high) -> blurred(from.rowRange(low, high)));
        assertThat(Core.norm(banded, whole, Core.NORM_INF)).isZero();
    }

    /** What lies beyond a band's rows is not looked at. */
    private static Mat blurred(Mat from) {
        Mat blurred = new Mat();
        Imgproc.boxFilter(
                from,
                blurred,
                CvType.CV_8U,
                new Size(1, 2 * REACH + 1),
                new org.opencv.core.Point(-1, -1),
                true,
                Core.BORDER_REFLECT_101 | Core.BORDER_ISOLATED);
        return blurred;
    }
}
