package weltwright.image.opencv;

import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/** Sets the elements of a matrix that a mask selects. */
public final class MaskedFill {
    private MaskedFill() {}

    /**
     * Sets elements to a value.
     *
     * @param mask 8 bits, of the size of the values; an element is set where it is not 0
     */
    public static void where(Mat mask, Mat values, double value) {
        // setTo returns a second Mat on the same memory, which would keep it until garbage collection.
        values.setTo(Scalar.all(value), mask).release();
    }
}
