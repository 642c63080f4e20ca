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
 * What is seen over what the bare lit ground would show, colour by colour: {@link #LIT} where they agree, less in a
 * shadow. What print leaves unknown is filled in from beside it, and noise is averaged.
 */
public final class RelativeReflectance {
    /** What lit ground has. */
    public static final double LIT = 110;

    /** Ratios are cut off here: how much brighter than black print a knife is does not matter. */
    private static final double BRIGHTEST = 255;

    /** So far beyond its gap a line's place is filled in from. */
    private static final double FILL_MM = 0.55;

    /** Standard deviation of what noise is averaged over, as far as half a millimetre of a mask's border allows. */
    private static final double BLUR_MM = 0.28;

    /** OpenCV's blur of floats ends so many standard deviations away. */
    private static final double BLUR_TAIL = 4;

    private RelativeReflectance() {}

    /**
     * A part of the ground, as it is seen and as it would be.
     *
     * @param seen the rectified picture, 8 bits, three channels
     * @param expected what the bare ground would show, float, three channels
     */
    public record Look(Mat seen, Mat expected) {}

    /**
     * On the pattern's raster; float, three channels.
     *
     * @param gapMm half the width of the gaps that printed lines leave in what is known of the ground
     * @param look at some rows of the pattern
     */
    public static Mat of(PrintPattern pattern, double gapMm, Function<PrintPattern, Look> look) {
        PlaneRaster raster = pattern.raster();
        RowBands.Size size = new RowBands.Size(raster.columns(), raster.rows(), CvType.CV_32FC3);
        int marginRows = (int) Math.ceil((gapMm + FILL_MM + BLUR_TAIL * BLUR_MM) / raster.mmPerPx()) + 2;
        return RowBands.of(size, marginRows, (from, to) -> {
            try (PrintPattern part = pattern.rows(from, to)) {
                return of(part, gapMm, look.apply(part));
            }
        });
    }

    private static Mat of(PrintPattern pattern, double gapMm, Look look) {
        double mmPerPx = pattern.raster().mmPerPx();
        Mat seen = new Mat();
        look.seen().convertTo(seen, CvType.CV_32F);
        Mat ratio = new Mat();
        Core.divide(seen, look.expected(), ratio, LIT, CvType.CV_32F);
        Core.min(ratio, Scalar.all(BRIGHTEST), ratio);
        Mat known = new Mat();
        Core.bitwise_or(pattern.paper(), pattern.black(), known);
        // So far that every gap's middle is reached from beside it, and hardly farther, or edges would blur.
        fillGaps(ratio, known, 2 * (int) Math.round((gapMm + FILL_MM) / mmPerPx) + 1);
        Imgproc.GaussianBlur(ratio, ratio, new Size(0, 0), BLUR_MM / mmPerPx);
        for (Mat used : List.of(look.seen(), look.expected(), seen, known)) {
            used.release();
        }
        return ratio;
    }

    /** Replaces what is not known by the mean of what is known in a square round it. */
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
        // Where nothing near is known, nothing speaks against the ground.
        Core.compare(count, Scalar.all(0), known, Core.CMP_EQ);
        MaskedFill.where(known, mean, LIT);
        mean.copyTo(values, unknown);
        for (Mat used : List.of(unknown, sum, count, counts, mean)) {
            used.release();
        }
    }
}
