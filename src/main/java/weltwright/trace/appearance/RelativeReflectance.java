package weltwright.trace.appearance;

import java.util.List;
import java.util.function.Function;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.image.opencv.MaskedFill;
import weltwright.image.parallel.RowBands;

/**
 * Divides the observed colour by that expected of the bare lit ground, channel by channel: {@link #LIT} where they
 * agree, less in a shadow. Pixels spoilt by print are filled in from beside them; noise is averaged.
 */
public final class RelativeReflectance {
    /** The value of lit ground: leaves room for twice its brightness in a byte; chosen by eye. */
    public static final double LIT = 110;

    /** Ratios are clipped here, the range of a byte: how much brighter than black print a knife is does not matter. */
    private static final double BRIGHTEST = 255;

    /** Width beyond a gap from which the gap is filled in; chosen by eye. */
    private static final double SUPPORT_MM = 0.55;

    /**
     * Standard deviation of the blur against noise: about half of the mask's accuracy of half a millimetre; chosen by
     * eye.
     */
    private static final double BLUR_MM = 0.28;

    /**
     * Radius of OpenCV's Gaussian kernel for floats, in standard deviations (OpenCV's {@code createGaussianKernels}).
     */
    private static final double BLUR_TAIL = 4;

    private RelativeReflectance() {}

    /**
     * The observed and the expected picture of the same part of the ground.
     *
     * @param seen the rectified photo, 8 bits, three channels
     * @param expected the bare ground in the same light, float, three channels
     */
    public record Comparison(Mat seen, Mat expected) {}

    /**
     * Computes the relative reflectance on the pattern's raster: float, three channels. It works in bands of rows to
     * bound the memory used.
     *
     * @param gapMm half the width of the gaps that printed lines leave in the masks of the pattern
     * @param comparison gives the pictures for some rows of the pattern; they are released here
     */
    public static Mat of(PrintPattern pattern, double gapMm, Function<PrintPattern, Comparison> comparison) {
        PlaneRaster raster = pattern.raster();
        RowBands.Size size = new RowBands.Size(raster.columns(), raster.rows(), CvType.CV_32FC3);
        int marginRows = (int) Math.ceil((gapMm + SUPPORT_MM + BLUR_TAIL * BLUR_MM) / raster.mmPerPx()) + 2;
        return RowBands.of(size, marginRows, (from, to) -> {
            try (PrintPattern part = pattern.rows(from, to)) {
                return of(part, gapMm, comparison.apply(part));
            }
        });
    }

    private static Mat of(PrintPattern pattern, double gapMm, Comparison comparison) {
        double mmPerPx = pattern.raster().mmPerPx();
        Mat seen = new Mat();
        comparison.seen().convertTo(seen, CvType.CV_32F);
        Mat ratio = new Mat();
        Core.divide(seen, comparison.expected(), ratio, LIT, CvType.CV_32F);
        Core.min(ratio, Scalar.all(BRIGHTEST), ratio);
        Mat known = new Mat();
        Core.bitwise_or(pattern.paper(), pattern.black(), known);
        // Just wide enough to reach the middle of each gap: a wider box would blur edges.
        fillGaps(ratio, known, 2 * (int) Math.round((gapMm + SUPPORT_MM) / mmPerPx) + 1);
        Imgproc.GaussianBlur(ratio, ratio, new Size(0, 0), BLUR_MM / mmPerPx);
        for (Mat used : List.of(comparison.seen(), comparison.expected(), seen, known)) {
            used.release();
        }
        return ratio;
    }

    /** Replaces unknown pixels by the mean of the known ones in a square around them. */
    private static void fillGaps(Mat values, Mat known, int widthPx) {
        Mat unknown = new Mat();
        Core.bitwise_not(known, unknown);
        MaskedFill.where(unknown, values, 0);
        Size box = new Size(widthPx, widthPx);
        Mat sum = new Mat();
        Imgproc.boxFilter(values, sum, CvType.CV_32F, box, new org.opencv.core.Point(-1, -1), false);
        Mat count = new Mat();
        Imgproc.boxFilter(known, count, CvType.CV_32F, box, new org.opencv.core.Point(-1, -1), false);
        Mat counts = new Mat();
        Core.merge(List.of(count, count, count), counts);
        Core.max(counts, Scalar.all(1), counts);
        Mat mean = new Mat();
        Core.divide(sum, counts, mean, 255, CvType.CV_32F);
        // Without any known neighbour a pixel counts as lit ground.
        Core.compare(count, Scalar.all(0), known, Core.CMP_EQ);
        MaskedFill.where(known, mean, LIT);
        mean.copyTo(values, unknown);
        for (Mat used : List.of(unknown, sum, count, counts, mean)) {
            used.release();
        }
    }
}
