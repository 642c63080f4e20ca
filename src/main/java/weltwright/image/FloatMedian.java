package weltwright.image;

/** The middle one of many values, without sorting them. */
public final class FloatMedian {
    private static final int HALF_BITS = 16;

    /** Median of the absolute value of a normal variable with standard deviation 1. */
    private static final double OF_NORMAL = 0.6745;

    private FloatMedian() {}

    /**
     * The standard deviation of what is normally distributed about 0 but for some that lies far off, from the sizes of
     * its values; 0 where there are none.
     */
    public static double sigma(float[] sizes) {
        return sizes.length == 0 ? 0 : of(sizes) / OF_NORMAL;
    }

    /**
     * The value at half of the count when they are sorted. Numbers that are not negative are ordered as their bits are,
     * so it is found by counting their upper halves, and then the lower halves of those with the right upper one.
     *
     * @param values at least one; none negative, nor not a number
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
