package weltwright.ground.ruled;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;

/**
 * A first guess at a ruled lattice in one patch of a picture: one crossing, and the ways to its two neighbours.
 *
 * <p>The steps:
 *
 * <ol>
 *   <li>the patch relative to its local median, which follows edges but no lines, with a ceiling on contrast;
 *   <li>its autocorrelation, which adds up all lines of the patch, whatever hides some of them: two families of lines
 *       make two ridges through its middle, along the lines, with knots where both families fall on themselves;
 *   <li>the directions of the two ridges, and the spacing of the knots along each;
 *   <li>the patch folded up by that spacing shows where in it the lines are, and whether lighter or darker.
 * </ol>
 *
 * @param crossing in pixels of the full picture
 * @param right to the next crossing along the line that is nearer to level, rightwards
 * @param up to the next along the other line, upwards in the picture
 * @param sign 1 where lines are lighter than the ground, -1 where darker
 */
record LatticeSeed(Point crossing, Point right, Point up, int sign) {
    private static final int REDUCED_LONG_SIDE_PX = 1512;

    /** Of the reduced picture; the second is for wide rulings, which show too few lines in the first. */
    private static final int[] PATCH_PX = {192, 384};

    /** The ground at a place is the median of so many squares across, so wide that few of them lie on lines. */
    private static final int SQUARES = 5;

    private static final int SQUARE_PX = 5;

    /** How many parts across a patch are looked at by themselves. */
    private static final int PATCH_BLOCKS = 4;

    private static final int PATCHES_TRIED = 8;

    /** Contrast relative to the ground is cut off here: pale lines still show, and what glints no more than they. */
    private static final double CEILING = 0.5;

    /** A ratio of one; more than twice that is far above the ceiling. */
    private static final double LIKE_GROUND = 128;

    private static final double DARKEST = 4;

    private static final double DEGREE_STEP = 0.5;

    /** Seen from up to 45 degrees aside, lines that are square to each other stay this far from parallel. */
    private static final double LEAST_ANGLE = 50;

    /** Guesses, the likeliest first, each made when it is asked for. To be closed. */
    static Stream<LatticeSeed> in(Mat grey) {
        double reduction = Math.min(1, (double) REDUCED_LONG_SIDE_PX / Math.max(grey.cols(), grey.rows()));
        Mat ratio = ratio(grey, reduction);
        Mat oneSided = of(ratio, relief -> relief * Math.abs(relief));
        // A list, since a stream within a stream would make all of a size's guesses when asked for one.
        List<Rect> patches = IntStream.of(PATCH_PX)
                .parallel()
                .boxed()
                .flatMap(patchPx -> busiest(oneSided, patchPx).stream())
                .toList();
        oneSided.release();
        return patches.stream()
                .flatMap(patch -> seed(ratio, patch).map(s -> s.placed(patch, reduction)).stream())
                .onClose(ratio::release);
    }

    /** A reduced picture's pixel is the mean of a square of the full one's; its middle is shifted accordingly. */
    private LatticeSeed placed(Rect patch, double reduction) {
        Point inReduced = crossing.plus(new Point(patch.x + 0.5, patch.y + 0.5));
        return new LatticeSeed(
                inReduced.times(1 / reduction).minus(new Point(0.5, 0.5)),
                right.times(1 / reduction),
                up.times(1 / reduction),
                sign);
    }

    /** How bright each pixel is over the ground round it, in parts of {@link #LIKE_GROUND}; 8 bits. */
    private static Mat ratio(Mat grey, double reduction) {
        Mat reduced = new Mat();
        // Where each pixel is near a new one's middle, those next to it say enough.
        int by = reduction > 0.7 ? Imgproc.INTER_LINEAR : Imgproc.INTER_AREA;
        Imgproc.resize(grey, reduced, new Size(), reduction, reduction, by);
        // What lies between lines changes slowly: the median of squares' means says as much as that of pixels.
        Mat ground = new Mat();
        Imgproc.resize(reduced, ground, new Size(), 1.0 / SQUARE_PX, 1.0 / SQUARE_PX, Imgproc.INTER_AREA);
        Imgproc.medianBlur(ground, ground, SQUARES);
        Imgproc.resize(ground, ground, reduced.size(), 0, 0, Imgproc.INTER_LINEAR);
        // A little more than nothing, lest the dark of a shadow be divided by.
        Core.add(reduced, new Scalar(DARKEST), reduced);
        Core.add(ground, new Scalar(DARKEST), ground);
        Core.divide(reduced, ground, reduced, LIKE_GROUND);
        ground.release();
        return reduced;
    }

    /** Some function of the relief, which is 0 where a pixel is as bright as the ground. */
    private static Mat of(Mat ratio, DoubleUnaryOperator function) {
        float[] values = new float[256];
        for (int i = 0; i < values.length; i++) {
            double relief = Math.max(-CEILING, Math.min(CEILING, i / LIKE_GROUND - 1));
            values[i] = (float) function.applyAsDouble(relief);
        }
        Mat table = new Mat(1, values.length, CvType.CV_32F);
        table.put(0, 0, values);
        Mat of = new Mat();
        Core.LUT(ratio, table, of);
        table.release();
        return of;
    }

    /**
     * Patches that are busy all over, the busiest first, not much of one in another: a ruling goes on through the whole
     * patch, and is as busy in one part of it as in another, while the grain, glint and edges of a knife leave parts of
     * it quiet. What counts is relief to one side, as lines have it, over that to the other: waves of a table's grain
     * have as much of both.
     *
     * @param oneSided the square of the relief, with its sign
     */
    private static List<Rect> busiest(Mat oneSided, int patchPx) {
        record Busy(Rect patch, double relief) {}
        int block = Math.min(patchPx, Math.min(oneSided.cols(), oneSided.rows())) / PATCH_BLOCKS;
        int size = PATCH_BLOCKS * block;
        int columns = oneSided.cols() / block;
        int rows = oneSided.rows() / block;
        float[] means = new float[columns * rows];
        Mat whole = oneSided.submat(0, rows * block, 0, columns * block);
        Mat blocks = new Mat();
        Imgproc.resize(whole, blocks, new Size(columns, rows), 0, 0, Imgproc.INTER_AREA);
        blocks.get(0, 0, means);
        for (Mat used : List.of(whole, blocks)) {
            used.release();
        }
        List<Busy> patches = new ArrayList<>();
        for (int j = 0; j + PATCH_BLOCKS <= rows; j++) {
            for (int i = 0; i + PATCH_BLOCKS <= columns; i++) {
                float[] inPatch = new float[PATCH_BLOCKS * PATCH_BLOCKS];
                for (int k = 0; k < inPatch.length; k++) {
                    inPatch[k] = Math.abs(means[(j + k / PATCH_BLOCKS) * columns + i + k % PATCH_BLOCKS]);
                }
                Arrays.sort(inPatch);
                double quiet = inPatch[inPatch.length / 4];
                double lively = inPatch[3 * inPatch.length / 4];
                patches.add(
                        new Busy(new Rect(i * block, j * block, size, size), lively > 0 ? quiet * quiet / lively : 0));
            }
        }
        patches.sort(Comparator.comparingDouble(Busy::relief).reversed());
        List<Rect> apart = new ArrayList<>();
        for (Busy busy : patches) {
            Rect patch = busy.patch();
            boolean far =
                    apart.stream().allMatch(o -> Math.max(Math.abs(o.x - patch.x), Math.abs(o.y - patch.y)) > size / 2);
            if (far && apart.size() < PATCHES_TRIED) {
                apart.add(patch);
            }
        }
        return apart;
    }

    private static Optional<LatticeSeed> seed(Mat ratio, Rect at) {
        Mat part = ratio.submat(at);
        Mat patch = of(part, relief -> relief);
        part.release();
        try {
            return seed(patch);
        } finally {
            patch.release();
        }
    }

    private static Optional<LatticeSeed> seed(Mat patch) {
        PatchAutocorrelation echo = new PatchAutocorrelation(patch);
        double[] ridge = new double[(int) (180 / DEGREE_STEP)];
        for (int k = 0; k < ridge.length; k++) {
            ridge[k] = echo.along(direction(k));
        }
        int first = strongest(ridge, -1);
        int second = strongest(ridge, first);
        Optional<Point> a = echo.knot(direction(first));
        Optional<Point> b = echo.knot(direction(second));
        if (a.isEmpty() || b.isEmpty()) {
            return Optional.empty();
        }
        boolean firstIsLevel =
                Math.abs(a.get().unit().x()) > Math.abs(b.get().unit().x());
        Point right = firstIsLevel ? a.get() : b.get();
        Point up = firstIsLevel ? b.get() : a.get();
        right = right.x() < 0 ? right.times(-1) : right;
        // Pixels count downwards: seen from above, up is to the left of right where their cross product is negative.
        up = right.cross(up) > 0 ? up.times(-1) : up;
        return Optional.of(folded(patch, right, up));
    }

    private static Point direction(int k) {
        double angle = Math.toRadians(k * DEGREE_STEP);
        return new Point(Math.cos(angle), Math.sin(angle));
    }

    private static int strongest(double[] ridge, int awayFrom) {
        int best = -1;
        for (int k = 0; k < ridge.length; k++) {
            int apart = Math.abs(k - awayFrom);
            boolean free = awayFrom < 0 || Math.min(apart, ridge.length - apart) * DEGREE_STEP >= LEAST_ANGLE;
            if (free && (best < 0 || ridge[k] > ridge[best])) {
                best = k;
            }
        }
        return best;
    }

    private static LatticeSeed folded(Mat patch, Point right, Point up) {
        float[] relief = new float[patch.cols() * patch.rows()];
        patch.get(0, 0, relief);
        Point middle = new Point((patch.cols() - 1) / 2.0, (patch.rows() - 1) / 2.0);
        double det = right.cross(up);
        Fold uprights = new Fold(right.norm());
        Fold levels = new Fold(up.norm());
        for (int y = 0; y < patch.rows(); y++) {
            for (int x = 0; x < patch.cols(); x++) {
                Point at = new Point(x, y).minus(middle);
                double a = at.cross(up) / det;
                double b = right.cross(at) / det;
                // Farther out the lines draw together and the folds no longer fit.
                if (Math.abs(a) < 1.5 && Math.abs(b) < 1.5) {
                    uprights.add(a, relief[y * patch.cols() + x]);
                    levels.add(b, relief[y * patch.cols() + x]);
                }
            }
        }
        int sign = uprights.skew() + levels.skew() >= 0 ? 1 : -1;
        Point crossing = middle.plus(right.times(uprights.peak(sign))).plus(up.times(levels.peak(sign)));
        return new LatticeSeed(crossing, right, up, sign);
    }

    /** Values by the fraction of their place. */
    private static final class Fold {
        private final double[] sums;
        private final int[] counts;

        Fold(double pitchPx) {
            sums = new double[(int) Math.max(5, Math.min(48, pitchPx))];
            counts = new int[sums.length];
        }

        void add(double place, double value) {
            int bin = (int) ((place - Math.floor(place)) * sums.length) % sums.length;
            sums[bin] += value;
            counts[bin]++;
        }

        private double[] means() {
            double[] means = new double[sums.length];
            for (int k = 0; k < means.length; k++) {
                means[k] = sums[k] / Math.max(1, counts[k]);
            }
            return means;
        }

        /** Lines take up less room than the ground, so theirs is the longer tail. */
        double skew() {
            double[] means = means();
            double mean = 0;
            for (double m : means) {
                mean += m / means.length;
            }
            double skew = 0;
            for (double m : means) {
                skew += Math.pow(m - mean, 3);
            }
            return skew;
        }

        /** The place of the lines, from -1/2 to 1/2. */
        double peak(int sign) {
            double[] means = means();
            int best = 0;
            for (int k = 0; k < means.length; k++) {
                best = sign * means[k] > sign * means[best] ? k : best;
            }
            double place = (best + 0.5) / means.length;
            return place > 0.5 ? place - 1 : place;
        }
    }
}
