package weltwright.geometry.fit;

/** The value that has a rank among many, without sorting all of them. */
public final class OrderStatistic {
    /** More than a product of a part and a count is off by, and less than any count. */
    private static final double ROUNDING = 1e-6;

    private OrderStatistic() {}

    /**
     * By Hoare's "Find" (Algorithm 65, Communications of the ACM 4, 1961). Puts the values in such an order that no
     * value before the rank is greater, and none after it less.
     *
     * @param rank from 0, the least, to one less than there are values
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

    /** The value at half of the count; of two in the middle the greater one. Changes their order. */
    public static double median(double[] values) {
        return of(values, values.length / 2);
    }

    /**
     * The least of the values that such a part of them do not exceed: the inverse of their distribution function, the
     * first of the definitions of a quantile in Hyndman and Fan (The American Statistician 50, 1996). Changes their
     * order.
     *
     * @param part of all, more than 0, at most 1
     */
    public static double quantile(double[] values, double part) {
        // 0.28 times 50 comes out a little above 14.
        return of(values, (int) Math.ceil(part * values.length - ROUNDING) - 1);
    }
}
