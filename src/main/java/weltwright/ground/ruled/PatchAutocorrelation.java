package weltwright.ground.ruled;

import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;

/**
 * How like a patch of a picture is to itself moved: the mean product of what comes to lie on each other, by the move.
 * Computed by way of the spectrum (theorem of Wiener and Khinchin), the patch padded so far that nothing comes round to
 * where it is looked at. A move and its opposite are the same, so only moves downwards are kept.
 */
final class PatchAutocorrelation {
    /** Moves farther than this leave too little in common. */
    private static final double SHARED = 0.55;

    /** Lines closer than this run into each other. */
    private static final double LEAST_PITCH_PX = 5;

    private static final double STEP_PX = 0.25;

    /** Of the best knot, to be good enough. */
    private static final double GOOD = 0.68;

    private final int size;
    private final int padded;
    private final float[] echo;

    PatchAutocorrelation(Mat patch) {
        size = Math.min(patch.cols(), patch.rows());
        int farthest = (int) Math.ceil(SHARED * size) + 2;
        padded = Core.getOptimalDFTSize(size + farthest);
        Mat field = Mat.zeros(padded, padded, CvType.CV_32F);
        Mat inside = field.submat(0, patch.rows(), 0, patch.cols());
        patch.copyTo(inside);
        Core.subtract(inside, Core.mean(inside), inside);
        inside.release();
        Core.dft(field, field, 0, patch.rows());
        Core.mulSpectrums(field, field, field, 0, true);
        Core.idft(field, field, Core.DFT_SCALE, farthest);
        echo = new float[farthest * padded];
        field.get(0, 0, echo);
        field.release();
    }

    /** @param move not upwards, and no farther than is shared */
    private double at(Point move) {
        int x = (int) Math.floor(move.x());
        int y = (int) Math.floor(move.y());
        double fx = move.x() - x;
        double fy = move.y() - y;
        double sum = (1 - fy) * ((1 - fx) * raw(x, y) + fx * raw(x + 1, y))
                + fy * ((1 - fx) * raw(x, y + 1) + fx * raw(x + 1, y + 1));
        return sum / ((size - Math.abs(move.x())) * (size - Math.abs(move.y())));
    }

    private double raw(int x, int y) {
        return echo[y * padded + (x < 0 ? x + padded : x)];
    }

    /** The mean along a ray that does not go upwards: great along a family of lines. */
    double along(Point direction) {
        double sum = 0;
        int count = 0;
        for (double r = LEAST_PITCH_PX; r < SHARED * size; r++) {
            sum += at(direction.times(r));
            count++;
        }
        return sum / count;
    }

    /**
     * The first knot along a ridge that does not go upwards: the way from crossing to crossing; empty where there is
     * none.
     */
    Optional<Point> knot(Point direction) {
        int first = (int) (LEAST_PITCH_PX / STEP_PX);
        double[] prominence = new double[(int) (SHARED * size / 1.5 / STEP_PX)];
        double best = 0;
        for (int k = first; k < prominence.length; k++) {
            prominence[k] = prominence(direction, k * STEP_PX);
            best = Math.max(best, prominence[k]);
        }
        for (int k = first + 1; k < prominence.length - 1; k++) {
            // Every fifth line may be bold, which makes the fifth knot the best: take the first good one.
            if (prominence[k] > GOOD * best
                    && prominence[k] >= prominence[k - 1]
                    && prominence[k] >= prominence[k + 1]) {
                return Optional.of(direction.times(k * STEP_PX));
            }
        }
        return Optional.empty();
    }

    /**
     * How far the likeness at a move rises over that at half of it and at half as much again. At parts of the true
     * spacing it does not rise, at twice that it is lower than beside. Farther knots are left out, which perspective
     * blurs.
     */
    private double prominence(Point direction, double pitch) {
        return at(direction.times(pitch)) - (at(direction.times(pitch / 2)) + at(direction.times(1.5 * pitch))) / 2;
    }
}
