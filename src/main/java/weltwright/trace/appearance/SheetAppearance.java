package weltwright.trace.appearance;

import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.DecodedPhoto;
import weltwright.image.opencv.MaskedFill;
import weltwright.units.PrintScale;

/**
 * The bare reference sheet in the light of a photo: the brightness of its paper over the page, and of its black print.
 *
 * @param light brightness of lit paper
 * @param blackness brightness of black print as a part of the paper's: blue, green, red; 0.01 to 1
 */
public record SheetAppearance(PaperIllumination light, Scalar blackness) {

    /**
     * Measures the appearance of the printed sheet in a photo.
     *
     * @param raster covers the whole page; a resolution of 0.5 mm suffices
     */
    public static SheetAppearance of(
            DecodedPhoto picture, CameraView view, ReferenceSheet sheet, PrintScale scale, PlaneRaster raster) {
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        try (PrintPattern pattern = SheetPrintPattern.of(sheet, scale, raster)) {
            Mat outside = raster.outsideMask(picture, view);
            MaskedFill.where(outside, pattern.paper(), 0);
            MaskedFill.where(outside, pattern.black(), 0);
            outside.release();
            PaperIllumination light = PaperIllumination.fit(seen, pattern.paper(), raster);
            return new SheetAppearance(light, blackness(seen, light.over(raster), pattern.black()));
        } finally {
            seen.release();
        }
    }

    /** Returns the bare sheet on a raster: float, three channels; pixels near printed edges and lines as paper. */
    public Mat expected(PlaneRaster raster, PrintPattern pattern) {
        Mat expected = light.over(raster);
        Mat black = new Mat();
        Core.multiply(expected, blackness, black);
        black.copyTo(expected, pattern.black());
        black.release();
        return expected;
    }

    /** Returns the median of the relative brightness of black pixels for each channel. */
    private static Scalar blackness(Mat seen, Mat light, Mat black) {
        Mat seenFloat = new Mat();
        seen.convertTo(seenFloat, CvType.CV_32F);
        Mat ratio = new Mat();
        Core.divide(seenFloat, light, ratio, 1000, CvType.CV_16U);
        short[] row = new short[ratio.cols() * 3];
        byte[] use = new byte[ratio.cols()];
        int[][] histogram = new int[3][1001];
        int count = 0;
        for (int y = 0; y < ratio.rows(); y++) {
            ratio.get(y, 0, row);
            black.get(y, 0, use);
            for (int x = 0; x < use.length; x++) {
                if (use[x] != 0) {
                    count++;
                    for (int k = 0; k < 3; k++) {
                        histogram[k][Math.min(1000, row[3 * x + k] & 0xffff)]++;
                    }
                }
            }
        }
        for (Mat used : List.of(seenFloat, ratio, light)) {
            used.release();
        }
        double[] median = new double[3];
        for (int k = 0; k < 3; k++) {
            int sum = 0;
            int at = 0;
            while (2 * sum < count) {
                sum += histogram[k][at++];
            }
            median[k] = Math.max(0.01, at / 1000.0);
        }
        return new Scalar(median[0], median[1], median[2]);
    }
}
