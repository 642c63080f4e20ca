package weltwright.image.opencv;

import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/** Writes one value where a mask is set. */
public final class MaskedFill {
    private MaskedFill() {}

    /**
     * Sets values to one value where a mask is set.
     *
     * @param mask 8 bits, of the same size; set where it is not 0
     */
    public static void where(Mat mask, Mat values, double value) {
        // What comes back holds the values' memory, too, and would keep it until it is collected.
        values.setTo(Scalar.all(value), mask).release();
    }
}
