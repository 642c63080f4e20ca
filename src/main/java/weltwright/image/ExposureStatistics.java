package weltwright.image;

import java.util.Arrays;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfFloat;
import org.opencv.core.MatOfInt;
import org.opencv.imgproc.Imgproc;

/**
 * Statistics of a picture's exposure.
 *
 * @param whiteLevel grey level, 0 to 255, that the brightest 2 % reach
 * @param blackLevel grey level that the darkest 2 % stay below
 * @param clippedPart part of the pixels that are clipped at white
 */
public record ExposureStatistics(double whiteLevel, double blackLevel, double clippedPart) {
    /** The least grey level that counts as clipped. Chosen by eye. */
    public static final int CLIPPED_LEVEL = 253;

    /** One row in this number is counted. */
    private static final int ROW_STEP = 4;

    /** Part of the pixels above the white level and below the black level. Chosen by eye. */
    private static final double EXTREME_PART = 0.02;

    /** Measures a picture. */
    public static ExposureStatistics of(DecodedPhoto picture) {
        double[] histogram = histogram(picture.grey());
        int white = 255;
        for (double sum = histogram[white]; white > 0 && sum < EXTREME_PART; sum += histogram[white]) {
            white--;
        }
        int black = 0;
        for (double sum = histogram[black]; black < 255 && sum < EXTREME_PART; sum += histogram[black]) {
            black++;
        }
        return new ExposureStatistics(
                white, black, Arrays.stream(histogram, CLIPPED_LEVEL, 256).sum());
    }

    /** Returns the part of the pixels that has each level. */
    private static double[] histogram(Mat grey) {
        // Four rows are reshaped into one, of which the first quarter is used.
        int every = Math.min(ROW_STEP, grey.rows());
        int rows = grey.rows() / every;
        Mat whole = grey.rowRange(0, rows * every);
        Mat fours = whole.reshape(1, rows);
        Mat some = fours.colRange(0, grey.cols());
        Mat counts = new Mat();
        MatOfInt channel = new MatOfInt(0);
        Mat everywhere = new Mat();
        MatOfInt levels = new MatOfInt(256);
        MatOfFloat range = new MatOfFloat(0, 256);
        Imgproc.calcHist(List.of(some), channel, everywhere, counts, levels, range);
        float[] count = new float[256];
        counts.get(0, 0, count);
        double[] parts = new double[256];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = count[i] / some.total();
        }
        for (Mat used : List.of(whole, fours, some, counts, channel, everywhere, levels, range)) {
            used.release();
        }
        return parts;
    }
}
