package weltwright.ground.ruled;

import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;

/**
 * The autocorrelation of a patch of a picture: the mean product of its values at two places, by their displacement.
 * Computed from the power spectrum (Wiener-Khinchin theorem) of the patch padded with zeros. Only displacements that do
 * not point upwards are stored, since it is symmetric.
 */
final class PatchAutocorrelation {
    /** Greatest displacement, relative to the patch's size; farther ones average over too few values. Chosen by eye. */
    private static final double GREATEST_SHIFT = 0.55;

    /** Least pitch that can be resolved. Chosen by eye. */
    private static final double LEAST_PITCH_PX = 5;

    /** Step meanAlong a ridge. Chosen by eye. */
    private static final double STEP_PX = 0.25;

    /** Least prominence of a peak, relative to the most prominent one meanAlong the ridge. Chosen by eye. */
    private static final double LEAST_PROMINENCE = 0.68;

    private final int size;
    private final int padded;
    private final float[] values;

    PatchAutocorrelation(Mat patch) {
        size = Math.min(patch.cols(), patch.rows());
        int farthest = (int) Math.ceil(GREATEST_SHIFT * size) + 2;
        padded = Core.getOptimalDFTSize(size + farthest);
        Mat field = Mat.zeros(padded, padded, CvType.CV_32F);
        Mat inside = field.submat(0, patch.rows(), 0, patch.cols());
        patch.copyTo(inside);
        Core.subtract(inside, Core.mean(inside), inside);
        inside.release();
        Core.dft(field, field, 0, patch.rows());
        Core.mulSpectrums(field, field, field, 0, true);
        Core.idft(field, field, Core.DFT_SCALE, farthest);
        values = new float[farthest * padded];
        field.get(0, 0, values);
        field.release();
    }

    /**
     * Returns the value at a displacement by bilinear interpolation.
     *
     * @param shift not upwards, and at most {@link #GREATEST_SHIFT} of the size
     */
    private double at(Point shift) {
        int x = (int) Math.floor(shift.x());
        int y = (int) Math.floor(shift.y());
        double fx = shift.x() - x;
        double fy = shift.y() - y;
        double sum = (1 - fy) * ((1 - fx) * raw(x, y) + fx * raw(x + 1, y))
                + fy * ((1 - fx) * raw(x, y + 1) + fx * raw(x + 1, y + 1));
        return sum / ((size - Math.abs(shift.x())) * (size - Math.abs(shift.y())));
    }

    private double raw(int x, int y) {
        return values[y * padded + (x < 0 ? x + padded : x)];
    }

    /** Returns the mean meanAlong a ray that does not point upwards; it is greatest meanAlong a family of lines. */
    double meanAlong(Point direction) {
        double sum = 0;
        int count = 0;
        for (double r = LEAST_PITCH_PX; r < GREATEST_SHIFT * size; r++) {
            sum += at(direction.times(r));
            count++;
        }
        return sum / count;
    }

    /**
     * Returns the displacement of the first peak along a ridge, which leads from one crossing to the next; empty where
     * there is none.
     */
    Optional<Point> firstPeak(Point direction) {
        int first = (int) (LEAST_PITCH_PX / STEP_PX);
        double[] prominence = new double[(int) (GREATEST_SHIFT * size / 1.5 / STEP_PX)];
        double best = 0;
        for (int k = first; k < prominence.length; k++) {
            prominence[k] = prominence(direction, k * STEP_PX);
            best = Math.max(best, prominence[k]);
        }
        for (int k = first + 1; k < prominence.length - 1; k++) {
            // Bold lines, often every fifth, make later peaks higher, so the first prominent peak is taken.
            if (prominence[k] > LEAST_PROMINENCE * best
                    && prominence[k] >= prominence[k - 1]
                    && prominence[k] >= prominence[k + 1]) {
                return Optional.of(direction.times(k * STEP_PX));
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the value at a displacement less the mean of those at half and at one and a half times of it, which is
     * large at the pitch, but not at fractions or at twice of it. Later peaks are not used, since perspective blurs
     * them.
     */
    private double prominence(Point direction, double pitch) {
        return at(direction.times(pitch)) - (at(direction.times(pitch / 2)) + at(direction.times(1.5 * pitch))) / 2;
    }
}
