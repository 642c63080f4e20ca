package weltwright.sheath.planform;

import java.util.function.ToDoubleBiFunction;

/** Makes a row of values at equal steps fair to the eye without making any of them less. */
final class Fairing {
    private Fairing() {}

    /**
     * Each as great as its neighbours: a step between two places then lies past it, wherever between them it really is.
     */
    static double[] widened(double[] values) {
        double[] widened = values.clone();
        for (int i = 0; i < values.length; i++) {
            widened[i] = Math.max(
                    values[i], Math.max(values[Math.max(0, i - 1)], values[Math.min(values.length - 1, i + 1)]));
        }
        return widened;
    }

    /**
     * Raised next to great values, so that none is more than {@code fall} less than the one before it and none more
     * than {@code rise} less than the one after it; else left alone.
     */
    static double[] sloped(double[] values, double fall, double rise) {
        double[] sloped = values.clone();
        for (int i = 1; i < sloped.length; i++) {
            sloped[i] = Math.max(sloped[i], sloped[i - 1] - fall);
        }
        for (int i = sloped.length - 2; i >= 0; i--) {
            sloped[i] = Math.max(sloped[i], sloped[i + 1] - rise);
        }
        return sloped;
    }

    /** Raised in hollows to the running mean, taken twice; left alone where it bends the other way. */
    static double[] hollowsRounded(double[] values, int over) {
        double[] rounded = mean(mean(values, over, Fairing::sloping), over, Fairing::sloping);
        for (int i = 0; i < values.length; i++) {
            rounded[i] = Math.max(rounded[i], values[i]);
        }
        return rounded;
    }

    /**
     * Smoothed by running means, and then raised, smoothly as well and from afar, where that cut something off. A
     * smooth curve comes out nearly as it was; a corner is rounded from outside.
     */
    static double[] faired(double[] values, int over) {
        double[] smooth = mean(mean(values, over, Fairing::sloping), over, Fairing::sloping);
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

    /**
     * The greatest value within some steps, then twice the mean of that within half as many: no steps are left, and no
     * corners. Beyond an end the value there goes on.
     */
    private static double[] levelled(double[] values, int over) {
        double[] greatest = values.clone();
        for (int i = 0; i < values.length; i++) {
            for (int k = Math.max(0, i - over); k <= Math.min(values.length - 1, i + over); k++) {
                greatest[i] = Math.max(greatest[i], values[k]);
            }
        }
        return mean(mean(greatest, over / 2, Fairing::level), over / 2, Fairing::level);
    }

    private static double[] mean(double[] values, int over, ToDoubleBiFunction<double[], Integer> beyond) {
        double[] mean = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            for (int k = i - over; k <= i + over; k++) {
                boolean within = k >= 0 && k < values.length;
                mean[i] += (within ? values[k] : beyond.applyAsDouble(values, k)) / (2 * over + 1);
            }
        }
        return mean;
    }

    private static double level(double[] values, int k) {
        return values[k < 0 ? 0 : values.length - 1];
    }

    /** As it came: the values turned about the end, so that a slope at the end stays. */
    private static double sloping(double[] values, int k) {
        int last = values.length - 1;
        return k < 0
                ? 2 * values[0] - values[Math.min(last, -k)]
                : 2 * values[last] - values[Math.max(0, 2 * last - k)];
    }
}
