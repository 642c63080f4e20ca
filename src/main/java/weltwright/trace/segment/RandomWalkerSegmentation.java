package weltwright.trace.segment;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.fit.FloatMedian;

/**
 * Parts a picture in two from seeds, after Grady (2006), "Random walks for image segmentation": a pixel belongs to the
 * seeds that a walker who sets out from it reaches first more often, where he crosses an edge the less readily the
 * clearer it is.
 *
 * <p>Made for seeds that lie close together all over the picture and for edges with gaps. A gap lets few walkers
 * through, so a part does not run out through it, as water does in a watershed; where there is no edge at all the
 * border passes half-way between the seeds. The chance is the potential in a {@link ResistorNetwork}.
 */
public final class RandomWalkerSegmentation {
    /** A step between neighbours of so many standard deviations of the usual one is an edge for sure. */
    private static final double EDGE_SIGMAS = 2.5;

    /** Where the picture is so many times as sharp as grain, half of the walkers turn back. */
    private static final double HALF_PASS = 3;

    /** Variance of a channel's noise that is always there, by the rounding of what it is computed from. */
    private static final double LEAST_NOISE = 0.02;

    /** Walkers cross even the clearest edge now and then, or a part without seeds would belong to nobody. */
    private static final float LEAST_CONDUCTANCE = 1e-4f;

    private final int columns;
    private final int rows;
    private final ResistorNetwork net;

    private RandomWalkerSegmentation(Mat seeds, int ours, int theirs) {
        columns = seeds.cols();
        rows = seeds.rows();
        net = new ResistorNetwork(columns, rows);
        plant(seeds, ours, theirs);
    }

    /**
     * Divides a picture between two labels by random walks from their seeds.
     *
     * @param picture three channels
     * @param seeds of the same size, 32 bits; 0 where nothing is known
     * @param ours label of the seeds whose part is wanted
     * @param theirs label of the others
     * @return 255 where a pixel is ours, 0 where it is theirs
     */
    static Mat part(Mat picture, Mat seeds, int ours, int theirs) {
        RandomWalkerSegmentation walk = new RandomWalkerSegmentation(seeds, ours, theirs);
        walk.conduct(picture);
        return walk.part();
    }

    /**
     * The same, the walker held up by what is sharp along a line, as suits a ground whose own lines lie so close that
     * there is little of it without one.
     *
     * @param sharpness on the raster of the seeds
     */
    static Mat part(SharpnessMap sharpness, Mat seeds, int ours, int theirs) {
        RandomWalkerSegmentation walk = new RandomWalkerSegmentation(seeds, ours, theirs);
        walk.conduct(sharpness);
        return walk.part();
    }

    private Mat part() {
        Mat potential = new Mat(rows, columns, CvType.CV_32F);
        potential.put(0, 0, net.settled());
        Mat part = new Mat();
        Core.compare(potential, new Scalar(0.5), part, Core.CMP_GT);
        potential.release();
        return part;
    }

    private void plant(Mat seeds, int ours, int theirs) {
        int[] labels = new int[columns * rows];
        seeds.get(0, 0, labels);
        for (int i = 0; i < labels.length; i++) {
            if (labels[i] == ours || labels[i] == theirs) {
                net.hold(i % columns, i / columns, labels[i] == ours ? 1 : 0);
            }
        }
    }

    private void conduct(SharpnessMap sharpness) {
        float[] passing = new float[columns * rows];
        for (int i = 0; i < passing.length; i++) {
            double edge = sharpness.values()[i] / HALF_PASS;
            passing[i] = (float) (1 / (1 + edge * edge * edge * edge)) + LEAST_CONDUCTANCE;
        }
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int i = y * columns + x;
                net.join(
                        x,
                        y,
                        Math.min(passing[i], passing[y * columns + Math.min(x + 1, columns - 1)]),
                        Math.min(passing[i], passing[Math.min(y + 1, rows - 1) * columns + x]));
            }
        }
    }

    private void conduct(Mat picture) {
        Mat white = new Mat();
        picture.convertTo(white, CvType.CV_32F);
        whiten(white);
        float[] acrossRight = means(white, new Size(2, 3));
        float[] acrossDown = means(white, new Size(3, 2));
        white.release();
        float[] squares = new float[2 * columns * rows];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int i = y * columns + x;
                squares[2 * i] = step(acrossRight, i, y * columns + Math.min(x + 2, columns - 1));
                squares[2 * i + 1] = step(acrossDown, i, Math.min(y + 2, rows - 1) * columns + x);
            }
        }
        // Most neighbours lie on one side of an edge, so the median is what noise does.
        float scale = (float) (1 / (EDGE_SIGMAS * EDGE_SIGMAS * Math.max(LEAST_NOISE, FloatMedian.of(squares))));
        IntStream.range(0, columns * rows)
                .parallel()
                .forEach(i -> net.join(
                        i % columns,
                        i / columns,
                        conductance(squares[2 * i] * scale),
                        conductance(squares[2 * i + 1] * scale)));
    }

    private static float conductance(float step) {
        return (float) Math.exp(-step) + LEAST_CONDUCTANCE;
    }

    /**
     * Mixes the channels so that noise is alike in all and shared by none: a picture's noise is mostly of brightness,
     * and so a faint change of hue tells more than a larger one of brightness.
     */
    private void whiten(Mat picture) {
        float[] bgr = new float[3 * columns * rows];
        picture.get(0, 0, bgr);
        int n = columns * (rows - 1);
        float[] squares = new float[n];
        for (int i = 0; i < n; i++) {
            squares[i] = step(bgr, i, i + columns);
        }
        float usual = FloatMedian.of(squares);
        float[] off = new float[3];
        double[][] noise = {{LEAST_NOISE, 0, 0}, {0, LEAST_NOISE, 0}, {0, 0, LEAST_NOISE}};
        for (int i = 0; i < n; i++) {
            if (squares[i] > usual) {
                continue;
            }
            for (int k = 0; k < 3; k++) {
                off[k] = bgr[3 * (i + columns) + k] - bgr[3 * i + k];
            }
            for (int k = 0; k < 3; k++) {
                for (int l = 0; l < 3; l++) {
                    noise[k][l] += off[k] * off[l] / n;
                }
            }
        }
        Mat covariance = new Mat(3, 3, CvType.CV_64F);
        covariance.put(
                0, 0, Arrays.stream(noise).flatMapToDouble(Arrays::stream).toArray());
        Mat variances = new Mat();
        Mat axes = new Mat();
        Core.eigen(covariance, variances, axes);
        for (int k = 0; k < 3; k++) {
            Mat axis = axes.row(k);
            Core.multiply(axis, new Scalar(1 / Math.sqrt(variances.get(k, 0)[0])), axis);
            axis.release();
        }
        Core.transform(picture, picture, axes);
        for (Mat used : List.of(covariance, variances, axes)) {
            used.release();
        }
    }

    /** The mean colours of boxes of pixels that end with each pixel. */
    private static float[] means(Mat picture, Size box) {
        Mat mean = new Mat();
        Imgproc.boxFilter(picture, mean, CvType.CV_32F, box, new Point(1, 1), true, Core.BORDER_REPLICATE);
        float[] bgr = new float[3 * mean.rows() * mean.cols()];
        mean.get(0, 0, bgr);
        mean.release();
        return bgr;
    }

    /** The square of the difference of two pixels' colours. */
    private static float step(float[] bgr, int i, int j) {
        float sum = 0;
        for (int k = 0; k < 3; k++) {
            float d = bgr[3 * i + k] - bgr[3 * j + k];
            sum += d * d;
        }
        return sum;
    }
}
