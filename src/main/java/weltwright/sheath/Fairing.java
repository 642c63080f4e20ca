package weltwright.sheath;

/**
 * Makes a row of values at equal steps fair to the eye without making any of them less. What lies beyond an end is taken to
 * go on as it came (the values turned about that end), so that a slope at an end stays.
 */
final class Fairing {
    private Fairing() {}

    /** The greatest value within some steps, then the mean of that within as many: no steps are left, only slopes. */
    static double[] levelled(double[] values, int over) {
        double[] greatest = values.clone();
        for (int i = 0; i < values.length; i++) {
            for (int k = Math.max(0, i - over); k <= Math.min(values.length - 1, i + over); k++) {
                greatest[i] = Math.max(greatest[i], values[k]);
            }
        }
        double[] mean = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            for (int k = i - over; k <= i + over; k++) {
                mean[i] += greatest[Math.max(0, Math.min(values.length - 1, k))] / (2 * over + 1);
            }
        }
        return mean;
    }

    /**
     * Smoothed by running means, and then raised, smoothly as well and from afar, where that cut something off. A smooth curve comes out
     * nearly as it was; a corner is rounded from outside.
     */
    static double[] faired(double[] values, int over) {
        double[] smooth = mean(mean(values, over), over);
        double[] cutOff = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            cutOff[i] = Math.max(0, values[i] - smooth[i]);
        }
        double[] raise = levelled(cutOff, 4 * over);
        for (int i = 0; i < values.length; i++) {
            smooth[i] += raise[i];
        }
        return smooth;
    }

    private static double[] mean(double[] values, int over) {
        double[] mean = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            for (int k = i - over; k <= i + over; k++) {
                mean[i] += beyond(values, k) / (2 * over + 1);
            }
        }
        return mean;
    }

    private static double beyond(double[] values, int k) {
        int last = values.length - 1;
        if (k < 0) {
            return 2 * values[0] - values[Math.min(last, -k)];
        }
        return k > last ? 2 * values[last] - values[Math.max(0, 2 * last - k)] : values[k];
    }
}
