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
 * A first estimate of a ruled lattice in a patch of a picture: one crossing and the vectors to two of its neighbours.
 *
 * <p>The steps:
 *
 * <ol>
 *   <li>divide the picture by its local median, which follows edges but not lines, and limit the contrast;
 *   <li>compute the autocorrelation of a patch, which sums up all its lines, whatever hides some of them. Two families
 *       of lines give two ridges through its middle, with peaks at the pitches;
 *   <li>find the directions of both ridges and the first peak along each;
 *   <li>fold the patch by these vectors, which gives the position of the lines, and whether they are lighter or darker.
 * </ol>
 *
 * @param crossing in pixels of the full picture
 * @param right vector to the next crossing along the more horizontal line, to the right
 * @param up vector to the next crossing along the other line, upwards in the picture
 * @param sign 1 where lines are lighter than the ground, -1 where darker
 */
record LatticeSeed(Point crossing, Point right, Point up, int sign) {
    /** Longer side of the reduced picture. Chosen by eye. */
    private static final int REDUCED_LONG_SIDE_PX = 1512;

    /** Sizes of the patches in the reduced picture; the larger one for wide pitches. Chosen by eye. */
    private static final int[] PATCH_PX = {192, 384};

    /**
     * Side of the window of the local median, in squares of {@link #SQUARE_PX}, so wide that few squares lie on lines.
     * Chosen by eye.
     */
    private static final int SQUARES = 5;

    /** Side of a square whose mean enters the local median. Chosen by eye. */
    private static final int SQUARE_PX = 5;

    /** Number of blocks along the side of a patch whose texture is compared. Chosen by eye. */
    private static final int PATCH_BLOCKS = 4;

    /** Greatest number of patches of a size. Chosen by eye. */
    private static final int PATCHES_TRIED = 8;

    /** Limit of the contrast relative to the ground, so that glints count no more than pale lines. Chosen by eye. */
    private static final double CEILING = 0.5;

    /** The 8-bit value of a pixel as bright as the ground; 255 is about twice that, beyond the limit of contrast. */
    private static final double LIKE_GROUND = 128;

    /** Added to both levels so that dark shadows are not divided by zero. Chosen by eye. */
    private static final double DARKEST = 4;

    /** Step of the directions in which ridges are sought. Chosen by eye. */
    private static final double DEGREE_STEP = 0.5;

    /**
     * Least angle between the two families of lines, in degrees. Perpendicular lines keep more than this up to an
     * obliquity of 45 degrees.
     */
    private static final double LEAST_ANGLE = 50;

    /** Returns seeds, the most probable first, each computed when it is requested. The stream must be closed. */
    static Stream<LatticeSeed> in(Mat grey) {
        double reduction = Math.min(1, (double) REDUCED_LONG_SIDE_PX / Math.max(grey.cols(), grey.rows()));
        Mat ratio = ratio(grey, reduction);
        Mat oneSided = of(ratio, relief -> relief * Math.abs(relief));
        // A list, since flatMap would compute all seeds of a size when one is requested.
        List<Rect> patches = IntStream.of(PATCH_PX)
                .parallel()
                .boxed()
                .flatMap(patchPx -> mostTextured(oneSided, patchPx).stream())
                .toList();
        oneSided.release();
        return patches.stream()
                .flatMap(patch -> seed(ratio, patch).map(s -> s.placed(patch, reduction)).stream())
                .onClose(ratio::release);
    }

    /**
     * Converts a seed from a patch of the reduced picture to the full picture, whose pixel centres are shifted by the
     * reduction.
     */
    private LatticeSeed placed(Rect patch, double reduction) {
        Point inReduced = crossing.plus(new Point(patch.x + 0.5, patch.y + 0.5));
        return new LatticeSeed(
                inReduced.times(1 / reduction).minus(new Point(0.5, 0.5)),
                right.times(1 / reduction),
                up.times(1 / reduction),
                sign);
    }

    /**
     * Returns the brightness of each pixel relative to the ground around it, in units of {@link #LIKE_GROUND}; 8 bits.
     */
    private static Mat ratio(Mat grey, double reduction) {
        Mat reduced = new Mat();
        // With a small reduction interpolation is as good as averaging, and faster.
        int by = reduction > 0.7 ? Imgproc.INTER_LINEAR : Imgproc.INTER_AREA;
        Imgproc.resize(grey, reduced, new Size(), reduction, reduction, by);
        // The ground is smooth, so the median of the squares' means replaces that of all pixels.
        Mat ground = new Mat();
        Imgproc.resize(reduced, ground, new Size(), 1.0 / SQUARE_PX, 1.0 / SQUARE_PX, Imgproc.INTER_AREA);
        Imgproc.medianBlur(ground, ground, SQUARES);
        Imgproc.resize(ground, ground, reduced.size(), 0, 0, Imgproc.INTER_LINEAR);

        Core.add(reduced, new Scalar(DARKEST), reduced);
        Core.add(ground, new Scalar(DARKEST), ground);
        Core.divide(reduced, ground, reduced, LIKE_GROUND);
        ground.release();
        return reduced;
    }

    /** Applies a function to the relief: the ratio less 1, limited in size. */
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
     * Returns patches with uniform texture, those with the most texture first, which overlap by at most half. A ruling
     * fills all blocks of a patch alike, while grain, glints and edges of a knife leave some blocks empty. The texture
     * is the relief to one side less that to the other: lines lie on one side, waves of a table's grain on both.
     *
     * @param oneSided the square of the relief, with its sign
     */
    private static List<Rect> mostTextured(Mat oneSided, int patchPx) {
        record Textured(Rect patch, double relief) {}
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
        List<Textured> patches = new ArrayList<>();
        for (int j = 0; j + PATCH_BLOCKS <= rows; j++) {
            for (int i = 0; i + PATCH_BLOCKS <= columns; i++) {
                float[] inPatch = new float[PATCH_BLOCKS * PATCH_BLOCKS];
                for (int k = 0; k < inPatch.length; k++) {
                    inPatch[k] = Math.abs(means[(j + k / PATCH_BLOCKS) * columns + i + k % PATCH_BLOCKS]);
                }
                Arrays.sort(inPatch);
                double weak = inPatch[inPatch.length / 4];
                double strong = inPatch[3 * inPatch.length / 4];
                patches.add(new Textured(
                        new Rect(i * block, j * block, size, size), strong > 0 ? weak * weak / strong : 0));
            }
        }
        patches.sort(Comparator.comparingDouble(Textured::relief).reversed());
        List<Rect> apart = new ArrayList<>();
        for (Textured textured : patches) {
            Rect patch = textured.patch();
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
        PatchAutocorrelation autocorrelation = new PatchAutocorrelation(patch);
        double[] ridge = new double[(int) (180 / DEGREE_STEP)];
        for (int k = 0; k < ridge.length; k++) {
            ridge[k] = autocorrelation.meanAlong(direction(k));
        }
        int first = strongest(ridge, -1);
        int second = strongest(ridge, first);
        Optional<Point> a = autocorrelation.firstPeak(direction(first));
        Optional<Point> b = autocorrelation.firstPeak(direction(second));
        if (a.isEmpty() || b.isEmpty()) {
            return Optional.empty();
        }
        boolean firstIsLevel =
                Math.abs(a.get().unit().x()) > Math.abs(b.get().unit().x());
        Point right = firstIsLevel ? a.get() : b.get();
        Point up = firstIsLevel ? b.get() : a.get();
        right = right.x() < 0 ? right.times(-1) : right;
        // Rows count downwards, so "up" is on the left of "right" where the cross product is negative.
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
                // Farther out perspective makes the folds overlap wrongly.
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

    /** Means of values by the fractional part of their position. */
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

        /**
         * Returns the third moment of the means. Lines are narrower than the ground between them, so its sign is that
         * of the lines.
         */
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

        /** Returns the position of the lines, from -1/2 to 1/2. */
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
