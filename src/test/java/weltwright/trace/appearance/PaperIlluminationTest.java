package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** Paper whose brightness is a known function of the place, a quarter of it hidden by something dark and its shadow. */
class PaperIlluminationTest {
    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-100, -70), new Point(100, 70), 0.5);
    private static final double[] BGR = {1, 1.05, 1.1};

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** Of second degree in its logarithm: from 119 to 226 in red. */
    private static double light(Point at) {
        double u = at.x() / 100;
        double v = at.y() / 100;
        return 180 * Math.exp(0.15 * u - 0.2 * v - 0.08 * u * u + 0.05 * u * v);
    }

    private static double reflected(Point at) {
        boolean isKnife = Math.abs(at.y() + 10) < 10;
        boolean isShadow = Math.abs(at.y() + 25) < 5;
        return isKnife ? 0.4 : isShadow ? 0.7 : 1;
    }

    @Test
    void findsTheLightOfWhatIsNotHidden() {
        PaperIllumination fitted = fit(BGR);
        float[] light = new float[3 * RASTER.columns() * RASTER.rows()];
        fitted.over(RASTER).get(0, 0, light);
        for (int row = 20; row < RASTER.rows(); row += 40) {
            for (int column = 20; column < RASTER.columns(); column += 40) {
                double truth = light(RASTER.pointAt(column, row));
                for (int k = 0; k < 3; k++) {
                    assertThat((double) light[3 * (row * RASTER.columns() + column) + k])
                            .isCloseTo(BGR[k] * truth, withinPercentage(1.5));
                }
            }
        }
    }

    @Test
    void tellsGreyPaperFromColouredAndFromDark() {
        assertThat(fit(BGR).isSteelGrey()).isTrue();
        assertThat(fit(new double[] {0.5, 1, 0.6}).isSteelGrey()).isFalse();
        assertThat(fit(new double[] {0.3, 0.3, 0.3}).isSteelGrey()).isFalse();
    }

    private static PaperIllumination fit(double[] bgr) {
        byte[] seen = new byte[3 * RASTER.columns() * RASTER.rows()];
        byte[] paper = new byte[RASTER.columns() * RASTER.rows()];
        for (int i = 0; i < paper.length; i++) {
            Point at = RASTER.pointAt(i % RASTER.columns(), i / RASTER.columns());
            boolean isLine = Math.abs(at.x() - 20 * Math.round(at.x() / 20)) < 1;
            paper[i] = (byte) (isLine ? 0 : 255);
            for (int k = 0; k < 3; k++) {
                seen[3 * i + k] = (byte) Math.round(isLine ? 30 : bgr[k] * reflected(at) * light(at));
            }
        }
        Mat picture = new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8UC3, Scalar.all(0));
        picture.put(0, 0, seen);
        Mat mask = new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8U);
        mask.put(0, 0, paper);
        return PaperIllumination.fit(picture, mask, RASTER);
    }
}
