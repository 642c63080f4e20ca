package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.OrderStatistic;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.Picture;

/**
 * Finds the knife's edge to a fraction of a pixel near a rough closed contour, on the picture's own pixels.
 *
 * <p>Made for an edge that is blurred over a pixel or two, and a contour that is off by no more than the reach and turns
 * no more sharply than the reach allows. The steps:
 *
 * <ol>
 *   <li>straighten a band along the contour, one row for each point of it, by looking along its normals;
 *   <li>find for each place of the band how much it looks like the knife's edge ({@link BandContrast});
 *   <li>through the band find the closed path of most contrast that does not jump (dynamic programming), so that neither
 *       a shadow's edge nor wood grain draws it away for a few points, and outside of which the ground's lines are seen,
 *       inside hidden ({@link LineEnds});
 *   <li>on each row take the top of the parabola through the path's highest value and its neighbours.
 * </ol>
 *
 * It stops at points; where they are in mm is for {@link SilhouetteBuilder} to say.
 */
final class EdgePath {
    /** Samples for each pixel across the edge of a picture that is not fine: an edge's blur has a few of them. */
    private static final double PER_PX = 2;

    /**
     * In a fine picture there are no more than this to the millimetre, or the path's moves from row to row, which are counted
     * in them, would be dearer there.
     */
    private static final double MOST_PER_MM = 14;

    /** Width of the smoothing across the edge, in pixels: about that of the blur of a sharp photo. */
    private static final double ACROSS_SIGMA_PX = 1.0;

    /** How many samples the path may move across from one row to the next. */
    private static final int MOST_JUMP = 5;

    /** What a move by one sample costs, in units of a strong edge's gain. */
    private static final double JUMP_COST = 0.04;

    /** What a place on a drawn line counts for by itself, next to a strong edge's gain. */
    private static final double DRAWN = 0.3;

    /** Rows to either side over which a strong edge is judged. */
    private static final int STRONG_ROWS = 60;

    /** What is strong changes slowly: so many rows share it. */
    private static final int ALIKE_ROWS = 8;

    /** The contrast of an edge that is faint but no noise, in standard deviations of the colours beside it per pixel. */
    private static final double FAINT = 2;

    /** What noise alone shows where it shows most, in the same. */
    private static final double NOISE = 0.3;

    /** What a millimetre of line counts for that is seen outside or hidden inside, in units of a strong edge's gain. */
    private static final double LINE_SEEN = 1.5;

    /** What is so steep is an edge, however much steeper others are: twice of what is faint. */
    private static final double CERTAIN = 4;

    private final Picture picture;
    private final Ground ground;
    private final double perPx;
    private final double stepPx;
    private final double reachPx;
    private final double alongPx;
    private final double steadyPx;

    /** What the ground shows of itself. */
    interface Ground {
        /** The place of the ground that is seen at a pixel, in mm. */
        Point place(Point pixel);

        /** What is printed at a place of the ground. */
        Print printAt(Point place);

        /** From 1, where a line is seen, to −1, where it is hidden; 0 where there is none, or where it is not to be told. */
        double shownAt(Point place);

        /** The colour of paper less that of its lines: blue, green, red. */
        double[] lineColour();

        /** Whether it is as grey and as bright as steel may be. */
        boolean isSteelGrey();
    }

    /** What may be mistaken for the knife's edge. */
    enum Print {
        NONE,
        LINE,
        BLACK
    }

    /**
     * @param pxPerMm pixels to the millimetre where the edge is
     * @param stepMm distance between points along the contour
     * @param reachMm how far to look to either side
     * @param alongMm standard deviation of the smoothing along the edge: steadies it, and rounds its corners
     * @param steadyMm the same where the edge is hardly to be seen
     */
    EdgePath(
            Picture picture,
            Ground ground,
            double pxPerMm,
            double stepMm,
            double reachMm,
            double alongMm,
            double steadyMm) {
        this.picture = picture;
        this.ground = ground;
        perPx = Math.min(PER_PX, MOST_PER_MM / pxPerMm);
        stepPx = stepMm * pxPerMm;
        reachPx = reachMm * pxPerMm;
        alongPx = alongMm * pxPerMm;
        steadyPx = steadyMm * pxPerMm;
    }

    /**
     * @param rough in pixels, closed round the knife; or a stretch of such a contour that has the knife on its left as
     *     the picture is seen, and to which the edge then keeps the nearer the better
     */
    List<EdgePoint> near(Polyline rough) {
        List<Point> base = rough.resampled(stepPx).points();
        int n = base.size();
        int half = (int) Math.round(reachPx * perPx);
        int width = 2 * half + 1;
        Point[] normal = normals(base, rough.closed());
        Both<LinesAcross[], BandContrast> both =
                Both.of(() -> lines(base, normal, half), () -> contrast(base, normal, half, rough.closed()));
        LinesAcross[] lines = both.first();
        BandContrast band = both.second();
        double[] most = most(band.path(), n, width);
        double strong = OrderStatistic.median(most.clone());
        float[] gain = gain(band.path(), most, width);
        add(lines, gain);
        int[] path = rough.closed() ? closedPath(gain, n, width) : openPath(nearer(gain, half), n, width);
        List<EdgePoint> edge = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            int k = summit(band.slope(), i * width, width, path[i]);
            double offset = k - half + parabola(band.slope(), i * width, width, k);
            double clear = Math.max(0, band.path()[i * width + path[i]] - NOISE);
            double held = lines[i].held(path[i]);
            edge.add(new EdgePoint(
                    at(base.get(i), normal[i], offset),
                    Math.max(held, clear / Math.max(NOISE, strong - NOISE)),
                    Math.max(held, clear / Math.max(NOISE, Math.min(strong, CERTAIN) - NOISE))));
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
        IntStream.range(0, (n + ALIKE_ROWS - 1) / ALIKE_ROWS).parallel().map(k -> k * ALIKE_ROWS).forEach(row -> {
            double[] near = new double[2 * reach + 1];
            for (int k = -reach; k <= reach; k++) {
                near[k + reach] = most[Math.floorMod(row + k, n)];
            }
            double strong = Math.max(FAINT, OrderStatistic.median(near));
            for (int k = row * width; k < Math.min(row + ALIKE_ROWS, n) * width; k++) {
                gain[k] = (float) (contrast[k] / (contrast[k] + 0.4 * strong));
            }
        });
        return gain;
    }

    private LinesAcross[] lines(List<Point> base, Point[] normal, int half) {
        LinesAcross[] lines = new LinesAcross[base.size()];
        for (int i = 0; i < lines.length; i++) {
            Point inmost = ground.place(at(base.get(i), normal[i], -half));
            Point outmost = ground.place(at(base.get(i), normal[i], half));
            lines[i] = LinesAcross.of(ground, 2 * half + 1, inmost, outmost);
        }
        return lines;
    }

    private static void add(LinesAcross[] lines, float[] gain) {
        int i = 0;
        for (LinesAcross line : lines) {
            for (double fits : line.fits()) {
                gain[i++] += (float) (LINE_SEEN * fits);
            }
        }
    }

    private Point at(Point base, Point normal, double samples) {
        return base.plus(normal.times(samples / perPx));
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

    private BandContrast contrast(List<Point> base, Point[] normal, int half, boolean closed) {
        int n = base.size();
        int width = 2 * half + 1;
        int wrap = (int) Math.ceil(3 * Math.max(alongPx, steadyPx) / stepPx);
        Both<Print[], Mat> both =
                Both.of(() -> print(base, normal, half), () -> seen(base, normal, half, closed, wrap));
        Print[] print = both.first();
        Mat band = both.second();
        Both<float[], float[]> smooth = Both.of(
                // On other grounds nobody asks for it.
                () -> ground.isSteelGrey() ? steady(band, print, closed, wrap) : new float[0],
                () -> fine(band, wrap, n));
        band.release();
        return BandContrast.of(smooth.second(), smooth.first(), print, n, perPx, ground);
    }

    /** What is printed on the ground at each place of the band. */
    private Print[] print(List<Point> base, Point[] normal, int half) {
        int n = base.size();
        int width = 2 * half + 1;
        Print[] print = new Print[n * width];
        for (int i = 0; i < n; i++) {
            // Over a row, which is short, pixels and places go in step.
            Point inmost = ground.place(at(base.get(i), normal[i], -half));
            Point outmost = ground.place(at(base.get(i), normal[i], half));
            for (int k = 0; k < width; k++) {
                print[i * width + k] = ground.printAt(inmost.towards(outmost, k / (width - 1.0)));
            }
        }
        return print;
    }

    private float[] fine(Mat band, int wrap, int rows) {
        Mat fine = new Mat();
        Imgproc.GaussianBlur(band, fine, new Size(0, 0), ACROSS_SIGMA_PX * perPx, alongPx / stepPx);
        float[] values = values(fine, wrap, rows);
        fine.release();
        return values;
    }

    /** The band's colours averaged farther along the edge, beside printed lines. */
    private float[] steady(Mat band, Print[] print, boolean closed, int wrap) {
        int width = band.cols();
        int n = print.length / width;
        Mat plain = new Mat(n + 2 * wrap, width, CvType.CV_32F);
        float[] row = new float[width];
        for (int r = 0; r < n + 2 * wrap; r++) {
            for (int k = 0; k < width; k++) {
                row[k] = print[row(r - wrap, n, closed) * width + k] == Print.LINE ? 0 : 1;
            }
            plain.put(r, 0, row);
        }
        Mat steady = averaged(band, plain);
        float[] values = values(steady, wrap, n);
        plain.release();
        steady.release();
        return values;
    }

    /** The colours of the band, row by row, with so many more rows at either end. */
    private Mat seen(List<Point> base, Point[] normal, int half, boolean closed, int wrap) {
        int rows = base.size() + 2 * wrap;
        int width = 2 * half + 1;
        Mat mapX = new Mat(rows, width, CvType.CV_32F);
        Mat mapY = new Mat(rows, width, CvType.CV_32F);
        float[] xs = new float[width];
        float[] ys = new float[width];
        for (int r = 0; r < rows; r++) {
            int i = row(r - wrap, base.size(), closed);
            Point inmost = at(base.get(i), normal[i], -half);
            Point step = normal[i].times(1 / perPx);
            for (int k = 0; k < width; k++) {
                xs[k] = (float) (inmost.x() + k * step.x());
                ys[k] = (float) (inmost.y() + k * step.y());
            }
            mapX.put(r, 0, xs);
            mapY.put(r, 0, ys);
        }
        Mat band = picture.seen(mapX, mapY, Imgproc.INTER_CUBIC, Core.BORDER_REPLICATE);
        band.convertTo(band, CvType.CV_32F);
        mapX.release();
        mapY.release();
        return band;
    }

    /**
     * The band averaged farther along the edge, what lies on printed lines left out as long as there is anything else
     * (normalised convolution: Knutsson and Westin 1993).
     */
    private Mat averaged(Mat band, Mat plain) {
        Mat weight = new Mat();
        Core.merge(List.of(plain, plain, plain), weight);
        // A line's own colour counts for very little, so that it stands where nothing else is near.
        Core.max(weight, Scalar.all(1e-3), weight);
        Mat steady = band.mul(weight);
        double along = steadyPx / stepPx;
        Imgproc.GaussianBlur(steady, steady, new Size(0, 0), ACROSS_SIGMA_PX * perPx, along);
        Imgproc.GaussianBlur(weight, weight, new Size(0, 0), ACROSS_SIGMA_PX * perPx, along);
        Core.divide(steady, weight, steady);
        weight.release();
        return steady;
    }

    private static float[] values(Mat band, int wrap, int rows) {
        Mat inner = band.rowRange(wrap, wrap + rows);
        float[] values = new float[rows * band.cols() * 3];
        inner.get(0, 0, values);
        inner.release();
        return values;
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
    private int summit(float[] contrast, int row, int width, int near) {
        int best = near;
        int pixel = (int) Math.round(perPx);
        for (int k = Math.max(0, near - pixel); k <= Math.min(width - 1, near + pixel); k++) {
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
