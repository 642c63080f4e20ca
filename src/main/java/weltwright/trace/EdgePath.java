package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
 *   <li>compare the colours well inside and well outside: their difference is what the edge steps through. Take the
 *       derivative across the edge along that difference, smoothed as Canny (1986) found best for a step in noise;
 *       grain and glints of other colours drop out. Where the ground has a printed line, take only the part of the
 *       difference that the line's own colour does not share. Where black print comes near, white and black take turns
 *       outside: there take how fast the colour leaves that of the inside;
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
    private static final int MOST_JUMP = 5;

    /** What a move by one sample costs, in units of a strong edge's gain. */
    private static final double JUMP_COST = 0.04;

    /** What a place on a drawn line counts for by itself, next to a strong edge's gain. */
    private static final double DRAWN = 0.3;

    /** Rows over which the colours inside and outside are judged, to either side. */
    private static final int COLOUR_ROWS = 20;

    /** Rows to either side over which a strong edge is judged. */
    private static final int STRONG_ROWS = 60;

    /** The contrast of an edge that is faint but no noise, in standard deviations of the colours beside it per pixel. */
    private static final double FAINT = 2;

    /** What noise alone shows where it shows most, in the same. */
    private static final double NOISE = 0.3;

    /** Next to black print an edge is believed this much: print is the stronger by far. */
    private static final double TRUST_AT_PRINT = 0.2;

    /** A colour that differs from the inside's by this many grey levels is not the inside. */
    private static final double LEFT_INSIDE = 40;

    /** What leaving the inside's colour within a pixel counts for, next to a clear edge elsewhere. */
    private static final double LEAVING = 30;

    private final Mat bgr;
    private final Ground ground;
    private final double stepPx;
    private final double reachPx;
    private final double alongPx;

    /** What the ground shows of itself. */
    interface Ground {
        /** The place of the ground that is seen at a pixel, in mm. */
        Point place(Point pixel);

        /** What is printed at a place of the ground. */
        Print printAt(Point place);

        /** The colour of paper less that of its lines: blue, green, red. */
        double[] lineColour();
    }

    /** What may be mistaken for the knife's edge. */
    enum Print {
        NONE,
        LINE,
        BLACK
    }

    /**
     * @param bgr the picture
     * @param stepPx distance between points along the contour
     * @param reachPx how far to look to either side
     * @param alongPx standard deviation of the smoothing along the edge: steadies it, and rounds its corners
     */
    EdgePath(Mat bgr, Ground ground, double stepPx, double reachPx, double alongPx) {
        this.bgr = bgr;
        this.ground = ground;
        this.stepPx = stepPx;
        this.reachPx = reachPx;
        this.alongPx = alongPx;
    }

    /**
     * @param rough in pixels, closed round the knife; or a stretch of such a contour that has the knife on its left as
     *     the picture is seen, and to which the edge then keeps the nearer the better
     */
    List<EdgePoint> near(Polyline rough) {
        List<Point> base = rough.resampled(stepPx).points();
        int n = base.size();
        int half = (int) Math.round(reachPx * PER_PX);
        int width = 2 * half + 1;
        Point[] normal = normals(base, rough.closed());
        Band band = band(base, normal, half, rough.closed());
        double[] most = most(band.path(), n, width);
        double strong = median(most);
        float[] gain = gain(band.path(), most, width);
        int[] path = rough.closed() ? closedPath(gain, n, width) : openPath(nearer(gain, half), n, width);
        List<EdgePoint> edge = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            int k = summit(band.slope(), i * width, width, path[i]);
            double offset = k - half + parabola(band.slope(), i * width, width, k);
            double clear = Math.max(0, band.path()[i * width + path[i]] - NOISE);
            edge.add(new EdgePoint(at(base.get(i), normal[i], offset), clear / Math.max(NOISE, strong - NOISE)));
        }
        return edge;
    }

    /**
     * An edge twice as strong is not twice as good: gain levels off. What is strong is judged nearby, so that a faint
     * stretch is followed as faithfully as a clear one; but where nothing stands out from the noise, noise is not.
     */
    private static float[] gain(float[] contrast, double[] most, int width) {
        int n = most.length;
        int reach = Math.min(n / 2, STRONG_ROWS);
        float[] gain = new float[contrast.length];
        double strong = 0;
        for (int i = 0; i < n; i++) {
            // It changes slowly: every few rows will do.
            if (i % 8 == 0) {
                double[] near = new double[2 * reach + 1];
                for (int k = -reach; k <= reach; k++) {
                    near[k + reach] = most[Math.floorMod(i + k, n)];
                }
                strong = Math.max(FAINT, median(near));
            }
            for (int k = i * width; k < (i + 1) * width; k++) {
                gain[k] = (float) (contrast[k] / (contrast[k] + 0.4 * strong));
            }
        }
        return gain;
    }

    private static Point at(Point base, Point normal, double samples) {
        return base.plus(normal.times(samples / PER_PX));
    }

    /**
     * Whoever drew a stretch drew it where the edge is, as well as a hand can: what lies at the rim counts for half, and
     * where nothing is to be seen the drawn line stands.
     */
    private static float[] nearer(float[] gain, int half) {
        int width = 2 * half + 1;
        float[] nearer = new float[gain.length];
        for (int i = 0; i < gain.length; i++) {
            double off = (i % width - half) / (double) half;
            nearer[i] = (float) (gain[i] * (1 - off * off / 2) + DRAWN * (1 - off * off));
        }
        return nearer;
    }

    /** Pointing out of the shape: a closed one whichever way round it is given. */
    private static Point[] normals(List<Point> base, boolean closed) {
        int n = base.size();
        // Pixels count downwards, so what the eye sees on the left of a line is on its right in numbers.
        double out = closed && Polyline.closed(base).signedAreaMm2() > 0 ? -1 : 1;
        Point[] normal = new Point[n];
        for (int i = 0; i < n; i++) {
            Point chord = base.get(row(i + 2, n, closed)).minus(base.get(row(i - 2, n, closed)));
            normal[i] = chord.unit().left().times(out);
        }
        return normal;
    }

    /** A row of a closed contour, counted on round it; of an open one the last row at either end. */
    private static int row(int i, int n, boolean closed) {
        return closed ? Math.floorMod(i, n) : Math.max(0, Math.min(n - 1, i));
    }

    /**
     * @param path what the path is sought in, for each sample of the band
     * @param slope what the edge's place on a row is read from
     */
    private record Band(float[] path, float[] slope) {}

    private Band band(List<Point> base, Point[] normal, int half, boolean closed) {
        int n = base.size();
        int width = 2 * half + 1;
        float[] colour = colours(base, normal, half, closed);
        ColourStep steps = new ColourStep(colour, n, width);
        double[] line = unit(ground.lineColour());
        float[] path = new float[n * width];
        float[] slope = new float[n * width];
        Print[] print = new Print[width];
        for (int i = 0; i < n; i++) {
            boolean nearBlack = false;
            // Over a row, which is short, pixels and places go in step.
            Point inmost = ground.place(at(base.get(i), normal[i], -half));
            Point outmost = ground.place(at(base.get(i), normal[i], half));
            for (int k = 0; k < width; k++) {
                print[k] = ground.printAt(inmost.towards(outmost, k / (width - 1.0)));
                nearBlack |= print[k] == Print.BLACK;
            }
            if (nearBlack) {
                leaving(colour, i, n, width, print, path, slope);
            } else {
                stepping(colour, i * width, width, print, steps.weights(i, COLOUR_ROWS), line, path);
                System.arraycopy(path, i * width, slope, i * width, width);
            }
        }
        return new Band(path, slope);
    }

    private static void stepping(
            float[] colour, int row, int width, Print[] print, double[] across, double[] line, float[] path) {
        double[] unshared = unshared(across, line);
        for (int k = 1; k < width - 1; k++) {
            double[] along = print[k] == Print.LINE ? unshared : across;
            path[row + k] = (float) Math.max(0, dot(along, slope(colour, row + k)));
        }
    }

    private static void leaving(
            float[] colour, int i, int n, int width, Print[] print, float[] path, float[] slope) {
        double[] inside = new double[3];
        int depth = Math.max(2, width / 4);
        int reach = 3;
        for (int j = -reach; j <= reach; j++) {
            int row = Math.floorMod(i + j, n) * width;
            for (int k = 0; k < depth; k++) {
                for (int c = 0; c < 3; c++) {
                    inside[c] += colour[3 * (row + k) + c] / (depth * (2 * reach + 1));
                }
            }
        }
        double[] left = new double[width];
        for (int k = 0; k < width; k++) {
            double[] off = new double[3];
            for (int c = 0; c < 3; c++) {
                off[c] = colour[3 * (i * width + k) + c] - inside[c];
            }
            left[k] = Math.min(1, Math.sqrt(dot(off, off)) / LEFT_INSIDE);
        }
        for (int k = 1; k < width - 1; k++) {
            double trust = print[k] == Print.BLACK ? TRUST_AT_PRINT : 1;
            double leaves = (left[k + 1] - left[k - 1]) * PER_PX / 2;
            double[] s = slope(colour, i * width + k);
            path[i * width + k] = (float) Math.max(0, trust * LEAVING * leaves);
            slope[i * width + k] = (float) Math.sqrt(dot(s, s));
        }
    }

    /** The change of colour per pixel across the edge. */
    private static double[] slope(float[] colour, int sample) {
        double[] slope = new double[3];
        for (int c = 0; c < 3; c++) {
            slope[c] = (colour[3 * sample + 3 + c] - colour[3 * sample - 3 + c]) * PER_PX / 2.0;
        }
        return slope;
    }

    /** The smoothed colours of the band, row by row: blue, green, red. */
    private float[] colours(List<Point> base, Point[] normal, int half, boolean closed) {
        int n = base.size();
        int width = 2 * half + 1;
        int wrap = 6;
        Mat mapX = new Mat(n + 2 * wrap, width, CvType.CV_32F);
        Mat mapY = new Mat(n + 2 * wrap, width, CvType.CV_32F);
        float[] xs = new float[width];
        float[] ys = new float[width];
        for (int row = 0; row < n + 2 * wrap; row++) {
            int i = row(row - wrap, n, closed);
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
        band.convertTo(band, CvType.CV_32F);
        Imgproc.GaussianBlur(band, band, new Size(0, 0), ACROSS_SIGMA_PX * PER_PX, alongPx / stepPx);
        float[] colour = new float[n * width * 3];
        Mat inner = band.rowRange(wrap, wrap + n).clone();
        inner.get(0, 0, colour);
        for (Mat used : List.of(mapX, mapY, band, inner)) {
            used.release();
        }
        return colour;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] unit(double[] v) {
        double length = Math.sqrt(dot(v, v));
        return length == 0 ? v : new double[] {v[0] / length, v[1] / length, v[2] / length};
    }

    /** The part of a colour step square to a line's colour, scaled to show a step as high as the whole would. */
    private static double[] unshared(double[] step, double[] line) {
        double shared = dot(step, line);
        double kept = Math.max(0.25, 1 - shared * shared);
        double[] part = new double[3];
        for (int c = 0; c < 3; c++) {
            part[c] = (step[c] - shared * line[c]) / kept;
        }
        return part;
    }

    /** Each row's greatest contrast. */
    private static double[] most(float[] contrast, int n, int width) {
        double[] most = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < width; k++) {
                most[i] = Math.max(most[i], contrast[i * width + k]);
            }
        }
        return most;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
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
        byte[][] came = new byte[n + 1][];
        for (int row = 1; row <= n; row++) {
            came[row] = new byte[width];
            score = reached(score, gain, (start + row) % n * width, came[row]);
        }
        int[] path = new int[n];
        int k = startAt;
        for (int row = n; row >= 1; row--) {
            path[(start + row) % n] = k;
            k += came[row][k];
        }
        return path;
    }

    /** The path of most gain from the first row to the last. */
    private static int[] openPath(float[] gain, int n, int width) {
        double[] score = new double[width];
        byte[][] came = new byte[n][width];
        for (int row = 0; row < n; row++) {
            score = reached(score, gain, row * width, came[row]);
        }
        int k = 0;
        for (int j = 1; j < width; j++) {
            k = score[j] > score[k] ? j : k;
        }
        int[] path = new int[n];
        for (int row = n - 1; row >= 0; row--) {
            path[row] = k;
            k += came[row][k];
        }
        return path;
    }

    /**
     * The best scores on the next row of a path.
     *
     * @param score the best on the row before
     * @param from where the next row's gains begin
     * @param came filled in: for each place, how far to the side the best way there comes from
     */
    private static double[] reached(double[] score, float[] gain, int from, byte[] came) {
        int width = score.length;
        double[] next = new double[width];
        for (int k = 0; k < width; k++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int j = -MOST_JUMP; j <= MOST_JUMP; j++) {
                if (k + j >= 0 && k + j < width) {
                    double reached = score[k + j] - JUMP_COST * j * j;
                    if (reached > best) {
                        best = reached;
                        came[k] = (byte) j;
                    }
                }
            }
            next[k] = best + gain[from + k];
        }
        return next;
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
