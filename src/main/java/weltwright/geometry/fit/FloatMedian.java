package weltwright.geometry.fit;

/** Computes the median of many non-negative floats by counting, without sorting or copying them. */
public final class FloatMedian {
    private static final int HALF_BITS = 16;

    /** Median of the absolute value of a standard normal variable. */
    private static final double NORMAL_MEDIAN = 0.6745;

    private FloatMedian() {}

    /**
     * Estimates the standard deviation of normally distributed values with mean 0, some of which may be outliers. 0
     * where there are no values.
     *
     * @param sizes absolute values
     */
    public static double normalSigma(float[] sizes) {
        return sizes.length == 0 ? 0 : of(sizes) / NORMAL_MEDIAN;
    }

    /**
     * Returns the value at half of the count in sorted order. The bit patterns of non-negative floats have the order of
     * the numbers (IEEE 754), so the upper half of the bits is found by counting, then the lower half among the values
     * that share it.
     *
     * @param values at least one; none negative or NaN
     */
    public static float of(float[] values) {
        int[] counts = new int[1 << HALF_BITS];
        for (float value : values) {
            counts[Float.floatToRawIntBits(value) >>> HALF_BITS]++;
        }
        int left = values.length / 2;
        int upper = 0;
        while (left >= counts[upper]) {
            left -= counts[upper++];
        }
        int[] lowerCounts = new int[1 << HALF_BITS];
        for (float value : values) {
            int bits = Float.floatToRawIntBits(value);
            if (bits >>> HALF_BITS == upper) {
                lowerCounts[bits & 0xffff]++;
            }
        }
        int lower = 0;
        while (left >= lowerCounts[lower]) {
            left -= lowerCounts[lower++];
        }
        return Float.intBitsToFloat(upper << HALF_BITS | lower);
    }
}
