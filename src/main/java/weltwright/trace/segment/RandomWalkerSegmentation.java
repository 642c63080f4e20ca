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
 * Segments a picture in two from seeds, after Grady (2006), "Random walks for image segmentation": a pixel belongs to
 * the seeds that a random walker from it is more likely to reach first. The walker crosses an edge the less readily the
 * clearer it is.
 *
 * <p>Made for seeds close together all over the picture and for edges with gaps. Few walkers pass a gap, so a segment
 * does not leak through it, unlike in a watershed; where there is no edge the border runs half-way between the seeds.
 * The probability is the potential in a {@link ResistorNetwork}.
 */
public final class RandomWalkerSegmentation {
    /** Difference of neighbours, in typical ones, at which the conductance is 1/e: the scale of an edge; by eye. */
    private static final double EDGE_SIGMAS = 2.5;

    /** Sharpness, in units of grain, at which the conductance is one half; chosen by eye. */
    private static final double HALF_CONDUCTANCE_SHARPNESS = 3;

    /** Pixels to either side of a step over which the slope is measured: 2 mm; chosen by eye. */
    private static final int SLOPE_PX = 5;

    /** Least variance of a channel's noise: about that of rounding to grey levels, 1/12, smoothed; from memory. */
    private static final double LEAST_NOISE = 0.02;

    /** Conductance to the segment that a pixel's own colour tells for sure, next to 1 between like pixels; by eye. */
    private static final float PRIOR_CONDUCTANCE = 0.012f;

    /** Least conductance: keeps segments without seeds connected; chosen by eye. */
    private static final float LEAST_CONDUCTANCE = 1e-4f;

    private final int columns;
    private final int rows;
    private final ResistorNetwork net;
    private final float[] prior;

    private RandomWalkerSegmentation(Mat seeds, float[] prior, int foreground, int background) {
        columns = seeds.cols();
        rows = seeds.rows();
        net = new ResistorNetwork(columns, rows);
        fixSeeds(seeds, foreground, background);
        this.prior = prior;
    }

    /**
     * Segments a picture, edges being sharp differences of colour between neighbours.
     *
     * @param picture three channels
     * @param seeds labels, of the same size, 32 bits; 0 where nothing is known
     * @param prior probability of the foreground at each pixel by itself, row by row (Grady 2005, "Multilabel random
     *     walker image segmentation using prior models"); one half where nothing is known
     * @param foreground label of the segment wanted
     * @param background label of the other one
     * @return a mask: 255 in the foreground, 0 in the background
     */
    static Mat segment(Mat picture, Mat seeds, float[] prior, int foreground, int background) {
        RandomWalkerSegmentation walk = new RandomWalkerSegmentation(seeds, prior, foreground, background);
        walk.connect(picture);
        return walk.mask();
    }

    /**
     * Segments a picture, edges being where it is sharp along a line: for a ground whose lines lie so close together
     * that little of it is plain.
     *
     * @param sharpness on the raster of the seeds
     */
    static Mat segment(SharpnessMap sharpness, Mat seeds, float[] prior, int foreground, int background) {
        RandomWalkerSegmentation walk = new RandomWalkerSegmentation(seeds, prior, foreground, background);
        walk.connect(sharpness);
        return walk.mask();
    }

    private Mat mask() {
        Mat potential = new Mat(rows, columns, CvType.CV_32F);
        potential.put(0, 0, net.solve());
        Mat mask = new Mat();
        Core.compare(potential, new Scalar(0.5), mask, Core.CMP_GT);
        potential.release();
        return mask;
    }

    private void fixSeeds(Mat seeds, int foreground, int background) {
        int[] labels = new int[columns * rows];
        seeds.get(0, 0, labels);
        for (int i = 0; i < labels.length; i++) {
            if (labels[i] == foreground || labels[i] == background) {
                net.fix(i % columns, i / columns, labels[i] == foreground ? 1 : 0);
            }
        }
    }

    private void connect(SharpnessMap sharpness) {
        float[] conductance = new float[columns * rows];
        for (int i = 0; i < conductance.length; i++) {
            double edge = sharpness.values()[i] / HALF_CONDUCTANCE_SHARPNESS;
            conductance[i] = (float) (1 / (1 + edge * edge * edge * edge)) + LEAST_CONDUCTANCE;
        }
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int i = y * columns + x;
                net.connect(
                        x,
                        y,
                        Math.min(conductance[i], conductance[y * columns + Math.min(x + 1, columns - 1)]),
                        Math.min(conductance[i], conductance[Math.min(y + 1, rows - 1) * columns + x]));
                pull(i, conductance[i]);
            }
        }
    }

    private void connect(Mat picture) {
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
                squares[2 * i] = sharpStep(acrossRight, y * columns, 1, x, columns);
                squares[2 * i + 1] = sharpStep(acrossDown, x, columns, y, rows);
            }
        }
        // Most neighbours lie on one side of an edge, so the median is due to noise.
        float scale = (float) (1 / (EDGE_SIGMAS * EDGE_SIGMAS * Math.max(LEAST_NOISE, FloatMedian.of(squares))));
        float[] toRight = new float[columns * rows];
        float[] toBelow = new float[columns * rows];
        IntStream.range(0, columns * rows).parallel().forEach(i -> {
            toRight[i] = conductance(squares[2 * i] * scale);
            toBelow[i] = conductance(squares[2 * i + 1] * scale);
            net.connect(i % columns, i / columns, toRight[i], toBelow[i]);
        });
        for (int i = columns; i < columns * rows; i++) {
            pull(i, Math.min(Math.min(toRight[i], toBelow[i]), Math.min(toRight[i - 1], toBelow[i - columns])));
        }
    }

    /** Pulls a pixel to the segment of its colour, the less the more of an edge it is: it may show both materials. */
    private void pull(int i, float flatness) {
        net.pull(
                i % columns,
                i / columns,
                PRIOR_CONDUCTANCE * flatness * Math.abs(2 * prior[i] - 1),
                prior[i] > 0.5 ? 1 : 0);
    }

    private static float conductance(float step) {
        return (float) Math.exp(-step) + LEAST_CONDUCTANCE;
    }

    /**
     * Transforms the channels linearly so that their noise is uncorrelated and of variance 1. The noise of a photo is
     * mostly of brightness, so a faint change of hue is more significant than a larger one of brightness.
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

    /** Returns for each pixel the mean colour of the box of pixels that ends with it. */
    private static float[] means(Mat picture, Size box) {
        Mat mean = new Mat();
        Imgproc.boxFilter(picture, mean, CvType.CV_32F, box, new Point(1, 1), true, Core.BORDER_REPLICATE);
        float[] bgr = new float[3 * mean.rows() * mean.cols()];
        mean.get(0, 0, bgr);
        mean.release();
        return bgr;
    }

    /**
     * Returns the square of the part of the step between two neighbours that is sharp: that exceeds the mean slope
     * around them, which a soft shadow has, too.
     *
     * @param from index of the first pixel of their row or column, {@code stride} that between two of its pixels
     * @param at place of the first of the two on the row or column, which has {@code length} pixels
     */
    private static float sharpStep(float[] bgr, int from, int stride, int at, int length) {
        int low = 3 * (from + stride * at);
        int high = 3 * (from + stride * Math.min(at + 2, length - 1));
        int below = 3 * (from + stride * Math.max(at - SLOPE_PX, 0));
        int above = 3 * (from + stride * Math.min(at + 2 + SLOPE_PX, length - 1));
        float sum = 0;
        for (int k = 0; k < 3; k++) {
            float step = bgr[high + k] - bgr[low + k];
            float slope = (bgr[above + k] - bgr[below + k]) / (1 + SLOPE_PX);
            float sharp = step * slope > 0 ? Math.max(0, Math.abs(step) - Math.abs(slope)) : step;
            sum += sharp * sharp;
        }
        return sum;
    }

    /** Returns the squared distance of the colours of two pixels. */
    private static float step(float[] bgr, int i, int j) {
        float sum = 0;
        for (int k = 0; k < 3; k++) {
            float d = bgr[3 * i + k] - bgr[3 * j + k];
            sum += d * d;
        }
        return sum;
    }
}
