package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds the knife's edge to a fraction of a pixel near a rough closed contour, on the picture's own pixels.
 *
 * <p>Made for an edge that is blurred over a pixel or two, and a contour that is off by no more than the reach and turns
 * no more sharply than the reach allows. The steps:
 *
 * <ol>
 *   <li>straighten a band along the contour, one row for each point of it, by looking along its normals;
 *   <li>take the derivative across the edge, smoothed as Canny (1986) found best for a step in noise;
 *   <li>through the band find the closed path of most contrast that does not jump (dynamic programming), so that neither
 *       a shadow's edge nor wood grain draws it away for a few points;
 *   <li>on each row take the top of the parabola through the path's highest value and its neighbours.
 * </ol>
 *
 * It stops at points; where they are in mm is for {@link SilhouetteBuilder} to say.
 */
final class EdgePath {
    /** Samples for each pixel across the edge. */
    private static final int PER_PX = 2;

    /** Width of the smoothing across the edge, in pixels: about that of the blur of a sharp photo. */
    private static final double ACROSS_SIGMA_PX = 1.0;

    /** How many samples the path may move across from one row to the next. */
    private static final int MOST_JUMP = 3;

    /** What a move by one sample costs, in units of a strong edge's gain. */
    private static final double JUMP_COST = 0.04;

    private final Mat bgr;
    private final double stepPx;
    private final double reachPx;

    /**
     * @param bgr the picture
     * @param stepPx distance between points along the contour
     * @param reachPx how far to look to either side
     */
    EdgePath(Mat bgr, double stepPx, double reachPx) {
        this.bgr = bgr;
        this.stepPx = stepPx;
        this.reachPx = reachPx;
    }

    /**
     * @param rough a closed contour in pixels, counter-clockwise as seen with y down or up alike
     * @param trust how far contrast at a pixel is to be believed, from 0 (the ground has print there) to 1
     */
    List<EdgePoint> near(Polyline rough, ToDoubleFunction<Point> trust) {
        List<Point> base = rough.resampled(stepPx).points();
        int n = base.size();
        int half = (int) Math.round(reachPx * PER_PX);
        int width = 2 * half + 1;
        Point[] normal = normals(base);
        float[] contrast = contrast(base, normal, half);
        float[] gain = new float[n * width];
        double strong = strong(contrast, n, width);
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < width; k++) {
                double believed = contrast[i * width + k] * trust.applyAsDouble(at(base.get(i), normal[i], k - half));
                gain[i * width + k] = (float) (believed / (believed + 0.4 * strong));
            }
        }
        int[] path = closedPath(gain, n, width);
        List<EdgePoint> edge = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            int k = summit(contrast, i * width, width, path[i]);
            double peak = contrast[i * width + k];
            double offset = k - half + parabola(contrast, i * width, width, k);
            edge.add(new EdgePoint(at(base.get(i), normal[i], offset), peak));
        }
        return edge;
    }

    private static Point at(Point base, Point normal, double samples) {
        return base.plus(normal.times(samples / PER_PX));
    }

    private static Point[] normals(List<Point> base) {
        int n = base.size();
        Point[] normal = new Point[n];
        for (int i = 0; i < n; i++) {
            Point chord = base.get((i + 2) % n).minus(base.get((i - 2 + n) % n));
            normal[i] = chord.unit().left();
        }
        return normal;
    }

    /** Derivative across the edge at each sample of the band: the root of the sum of squares over the channels. */
    private float[] contrast(List<Point> base, Point[] normal, int half) {
        int n = base.size();
        int width = 2 * half + 1;
        int wrap = 4;
        Mat mapX = new Mat(n + 2 * wrap, width, CvType.CV_32F);
        Mat mapY = new Mat(n + 2 * wrap, width, CvType.CV_32F);
        float[] xs = new float[width];
        float[] ys = new float[width];
        for (int row = 0; row < n + 2 * wrap; row++) {
            int i = Math.floorMod(row - wrap, n);
            for (int k = 0; k < width; k++) {
                Point p = at(base.get(i), normal[i], k - half);
                xs[k] = (float) p.x();
                ys[k] = (float) p.y();
            }
            mapX.put(row, 0, xs);
            mapY.put(row, 0, ys);
        }
        Mat band = new Mat();
        Imgproc.remap(bgr, band, mapX, mapY, Imgproc.INTER_CUBIC, Core.BORDER_REPLICATE);
        Mat smooth = new Mat();
        band.convertTo(smooth, CvType.CV_32F);
        Imgproc.GaussianBlur(smooth, smooth, new Size(0, 0), ACROSS_SIGMA_PX * PER_PX, 1.0);
        Mat slope = new Mat();
        Mat central = new Mat(1, 3, CvType.CV_32F);
        central.put(0, 0, new float[] {-PER_PX / 2f, 0, PER_PX / 2f});
        Imgproc.filter2D(smooth, slope, CvType.CV_32F, central);
        float[] all = new float[(n + 2 * wrap) * width * 3];
        slope.get(0, 0, all);
        for (Mat used : List.of(mapX, mapY, band, smooth, slope, central)) {
            used.release();
        }
        float[] contrast = new float[n * width];
        for (int i = 0; i < contrast.length; i++) {
            int from = 3 * (i + wrap * width);
            contrast[i] = (float) Math.sqrt(
                    all[from] * all[from] + all[from + 1] * all[from + 1] + all[from + 2] * all[from + 2]);
        }
        return contrast;
    }

    /** What a good edge reaches in this picture: the median of the rows' greatest contrast. */
    private static double strong(float[] contrast, int n, int width) {
        double[] most = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < width; k++) {
                most[i] = Math.max(most[i], contrast[i * width + k]);
            }
        }
        Arrays.sort(most);
        return most[n / 2];
    }

    /** The path of most gain through all rows that ends where it began; starts on the row that is clearest. */
    private static int[] closedPath(float[] gain, int n, int width) {
        int start = 0;
        int startAt = 0;
        double clearest = -1;
        for (int i = 0; i < n; i++) {
            double sum = 0;
            int best = 0;
            for (int k = 0; k < width; k++) {
                sum += gain[i * width + k];
                best = gain[i * width + k] > gain[i * width + best] ? k : best;
            }
            double clear = gain[i * width + best] - sum / width;
            if (clear > clearest) {
                clearest = clear;
                start = i;
                startAt = best;
            }
        }
        double[] score = new double[width];
        Arrays.fill(score, Double.NEGATIVE_INFINITY);
        score[startAt] = 0;
        byte[] came = new byte[(n + 1) * width];
        for (int row = 1; row <= n; row++) {
            double[] next = new double[width];
            int from = (start + row) % n * width;
            for (int k = 0; k < width; k++) {
                double best = Double.NEGATIVE_INFINITY;
                int jumped = 0;
                for (int j = -MOST_JUMP; j <= MOST_JUMP; j++) {
                    if (k + j >= 0 && k + j < width) {
                        double reached = score[k + j] - JUMP_COST * j * j;
                        if (reached > best) {
                            best = reached;
                            jumped = j;
                        }
                    }
                }
                next[k] = best + gain[from + k];
                came[row * width + k] = (byte) jumped;
            }
            score = next;
        }
        int[] path = new int[n];
        int k = startAt;
        for (int row = n; row >= 1; row--) {
            path[(start + row) % n] = k;
            k += came[row * width + k];
        }
        return path;
    }

    /** The nearest local maximum of contrast within a pixel of the path. */
    private static int summit(float[] contrast, int row, int width, int near) {
        int best = near;
        for (int k = Math.max(0, near - PER_PX); k <= Math.min(width - 1, near + PER_PX); k++) {
            best = contrast[row + k] > contrast[row + best] ? k : best;
        }
        return best;
    }

    private static double parabola(float[] contrast, int row, int width, int k) {
        if (k == 0 || k == width - 1) {
            return 0;
        }
        double before = contrast[row + k - 1];
        double after = contrast[row + k + 1];
        double bend = before - 2 * contrast[row + k] + after;
        return bend >= 0 ? 0 : Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend)));
    }
}
