package weltwright.image;

import java.util.Arrays;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfFloat;
import org.opencv.core.MatOfInt;
import org.opencv.imgproc.Imgproc;

/**
 * How well lit a picture is, whatever it shows.
 *
 * @param whiteLevel grey level, 0 to 255, that the lightest fiftieth of it reaches
 * @param blackLevel grey level that its darkest fiftieth stays below
 * @param burntPart part of it that is as white as can be
 */
public record ExposureStatistics(double whiteLevel, double blackLevel, double burntPart) {
    /** The level beyond which a camera records nothing. */
    public static final int BURNT = 253;

    private static final int EVERY = 4;

    private static final double EXTREME_PART = 0.02;

    /** Measured on every fourth row. */
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
                white, black, Arrays.stream(histogram, BURNT, 256).sum());
    }

    /** Parts of the picture that have each level. */
    private static double[] histogram(Mat grey) {
        // Every fourth row tells as much: four rows taken as one, and the first quarter of that.
        int every = Math.min(EVERY, grey.rows());
        int rows = grey.rows() / every;
        Mat whole = grey.rowRange(0, rows * every);
        Mat fours = whole.reshape(1, rows);
        Mat some = fours.colRange(0, grey.cols());
        Mat counts = new Mat();
        Imgproc.calcHist(List.of(some), new MatOfInt(0), new Mat(), counts, new MatOfInt(256), new MatOfFloat(0, 256));
        float[] count = new float[256];
        counts.get(0, 0, count);
        double[] parts = new double[256];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = count[i] / some.total();
        }
        for (Mat used : List.of(whole, fours, some, counts)) {
            used.release();
        }
        return parts;
    }
}
