package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** A ground that gives back three fifths of what it should, but for a stripe of print of which nothing is known. */
class RelativeReflectanceTest {
    private static final double GAP_MM = 0.4;
    private static final double MM_PER_PX = 0.2;

    /** So many rows that they are made in bands. */
    private static final PlaneRaster RASTER = new PlaneRaster(new Point(0, 0), MM_PER_PX, 60, 400);

    private static final int STRIPE_FROM = 28;
    private static final int STRIPE_TO = 32;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void isTheShareOfWhatTheGroundWouldShowAndFillsInWhatIsNotKnown() {
        Mat paper = new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8U, Scalar.all(255));
        paper.colRange(STRIPE_FROM, STRIPE_TO).setTo(Scalar.all(0));
        Mat black = new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8U, Scalar.all(0));
        PrintPattern pattern = new PrintPattern(RASTER, paper, black, new byte[RASTER.rows() * RASTER.columns()]);

        Mat ratio = RelativeReflectance.of(pattern, GAP_MM, part -> {
            int rows = part.raster().rows();
            Mat seen = new Mat(rows, RASTER.columns(), CvType.CV_8UC3, new Scalar(60, 90, 120));
            seen.colRange(STRIPE_FROM, STRIPE_TO).setTo(Scalar.all(0));
            return new RelativeReflectance.Comparison(
                    seen, new Mat(rows, RASTER.columns(), CvType.CV_32FC3, new Scalar(100, 150, 200)));
        });

        assertThat(ratio.rows()).isEqualTo(RASTER.rows());
        float[] values = new float[3 * RASTER.rows() * RASTER.columns()];
        ratio.get(0, 0, values);
        for (float value : values) {
            assertThat(value).isCloseTo((float) (0.6 * RelativeReflectance.LIT), within(0.05f));
        }
    }
}
