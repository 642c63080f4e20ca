package weltwright.trace.segment;

import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.fit.FloatMedian;
import weltwright.image.parallel.ParallelPair;

/**
 * The sharpness of a rectified photo at each pixel, in units of the sharpness of its grain.
 *
 * <p>Sharpness is the change of colour over a fraction of a millimetre minus the mean slope over a wider distance (a
 * soft shadow has the same slope in both), averaged along the direction in which it is greatest: an edge continues
 * along a line, grain does not.
 *
 * @param raster half as fine as the picture's
 * @param values row by row; 1 is what grain makes, as its median
 */
public record SharpnessMap(PlaneRaster raster, float[] values) {
    /** Standard deviations of the blur that are tried in turn until the grain is weak enough; chosen by eye. */
    private static final double[] BLURS_PX = {1, 2, 3};

    /**
     * Greatest median sharpness of grain, in grey levels per pixel, before more blur is tried. Measured: up to 0.3 in
     * clean photos, 0.45 with noise of 6 grey levels, 1.8 with 30.
     */
    private static final float MOST_GRAIN = 0.35f;

    /** Distance to either side over which the slope is measured; chosen by eye. */
    private static final int SLOPE_PX = 4;

    /** Number of directions tried over half a turn: 15 degrees apart, the least that a line of nine pixels resolves. */
    private static final int DIRECTIONS = 12;

    /** Least known part of a line to be relied on; chosen by eye. */
    private static final double LEAST_KNOWN = 0.3;

    /** Length of the line averaged, in pixels of half the raster: three to four millimetres; chosen by eye. */
    private static final int LINE_PX = 9;

    /**
     * Measures the sharpness of a rectified photo.
     *
     * @param picture rectified, 8 bits, three channels
     * @param plain 255 where the ground is plain; other pixels are left out of the averages
     * @param raster of both
     */
    public static SharpnessMap of(Mat picture, Mat plain, PlaneRaster raster) {
        Size half = new Size(raster.halved().columns(), raster.halved().rows());
        Mat known = known(plain, half);
        float[] values = {};
        float grain = Float.POSITIVE_INFINITY;
        for (int i = 0; i < BLURS_PX.length && grain > MOST_GRAIN; i++) {
            values = changes(picture, known, half, BLURS_PX[i]);
            grain = Math.max(1e-3f, FloatMedian.of(values));
        }
        known.release();
        for (int i = 0; i < values.length; i++) {
            values[i] /= grain;
        }
        return new SharpnessMap(raster.halved(), values);
    }

    /** Returns the sharpness at each pixel of half the raster, in grey levels per pixel. */
    private static float[] changes(Mat picture, Mat known, Size half, double blurPx) {
        Mat smooth = new Mat();
        picture.convertTo(smooth, CvType.CV_32F);
        Imgproc.GaussianBlur(smooth, smooth, new Size(0, 0), blurPx);
        ParallelPair<Mat, Mat> both =
                ParallelPair.of(() -> halved(step(smooth, true), half), () -> halved(step(smooth, false), half));
        Mat alongX = both.first();
        Mat alongY = both.second();
        Mat known3 = new Mat();
        Core.merge(List.of(known, known, known), known3);
        Core.multiply(alongX, known3, alongX);
        Core.multiply(alongY, known3, alongY);
        Mat most = new Mat(half, CvType.CV_32F, new Scalar(0));
        IntStream.range(0, DIRECTIONS)
                .parallel()
                .mapToObj(d -> along(Math.PI * d / DIRECTIONS, alongX, alongY, known))
                .forEach(square -> {
                    synchronized (most) {
                        Core.max(most, square, most);
                    }
                    square.release();
                });
        Core.sqrt(most, most);
        float[] values = new float[most.cols() * most.rows()];
        most.get(0, 0, values);
        for (Mat used : List.of(smooth, alongX, alongY, most, known3)) {
            used.release();
        }
        return values;
    }

    /** Returns the squared change across a direction, averaged along it over known pixels. */
    private static Mat along(double angle, Mat alongX, Mat alongY, Mat known) {
        Mat across = new Mat();
        Core.addWeighted(alongX, -Math.sin(angle), alongY, Math.cos(angle), 0, across);
        Mat kernel = line(angle);
        Imgproc.filter2D(across, across, CvType.CV_32F, kernel);
        Core.multiply(across, across, across);
        Mat square = new Mat();
        Mat sum = Mat.ones(1, 3, CvType.CV_32F);
        Core.transform(across, square, sum);
        Mat part = new Mat();
        Imgproc.filter2D(known, part, CvType.CV_32F, kernel);
        Core.max(part, new Scalar(LEAST_KNOWN), part);
        Core.multiply(part, part, part);
        Core.divide(square, part, square);
        for (Mat used : List.of(across, kernel, part, sum)) {
            used.release();
        }
        return square;
    }

    /** Returns 1 where the ground is plain all around a pixel, 0 elsewhere. */
    private static Mat known(Mat plain, Size half) {
        Mat known = new Mat();
        Mat around = Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(5, 5));
        Imgproc.erode(plain, known, around);
        around.release();
        Imgproc.resize(known, known, half, 0, 0, Imgproc.INTER_AREA);
        Imgproc.threshold(known, known, 254, 1, Imgproc.THRESH_BINARY);
        known.convertTo(known, CvType.CV_32F);
        return known;
    }

    /** Returns the change from pixel to pixel along columns or rows, minus the slope over a wider distance. */
    private static Mat step(Mat smooth, boolean alongX) {
        int length = 2 * SLOPE_PX + 1;
        Mat kernel = Mat.zeros(alongX ? 1 : length, alongX ? length : 1, CvType.CV_32F);
        float[] weights = new float[length];
        weights[SLOPE_PX - 1] = -0.5f;
        weights[SLOPE_PX + 1] = 0.5f;
        weights[0] = 0.5f / SLOPE_PX;
        weights[length - 1] = -0.5f / SLOPE_PX;
        kernel.put(0, 0, weights);
        Mat step = new Mat();
        Imgproc.filter2D(smooth, step, CvType.CV_32F, kernel);
        kernel.release();
        return step;
    }

    private static Mat halved(Mat full, Size half) {
        Mat halved = new Mat();
        Imgproc.resize(full, halved, half, 0, 0, Imgproc.INTER_AREA);
        full.release();
        return halved;
    }

    /** Returns a kernel that averages along a line through its middle. */
    private static Mat line(double angle) {
        Mat line = Mat.zeros(LINE_PX, LINE_PX, CvType.CV_8U);
        double half = Math.floorDiv(LINE_PX, 2);
        double fine = 16;
        Imgproc.line(
                line,
                new org.opencv.core.Point(
                        (half - half * Math.cos(angle)) * fine, (half - half * Math.sin(angle)) * fine),
                new org.opencv.core.Point(
                        (half + half * Math.cos(angle)) * fine, (half + half * Math.sin(angle)) * fine),
                new Scalar(255),
                1,
                Imgproc.LINE_AA,
                4);
        Mat kernel = new Mat();
        line.convertTo(kernel, CvType.CV_32F, 1 / Core.sumElems(line).val[0]);
        line.release();
        return kernel;
    }
}
