package weltwright.app.gui.drawing;

import java.util.stream.DoubleStream;
import weltwright.message.Language;

/**
 * Round values on an axis from 0 on, in steps of 1, 2 or 5 times a power of ten.
 *
 * @param step from one value to the next
 * @param greatest end of the axis
 */
public record RoundSteps(double step, double greatest) {
    private static final double[] MANTISSAS = {1, 2, 5, 10};

    /**
     * Returns the finest steps that are not too many.
     *
     * @param most greatest number of steps; at least 1
     */
    public static RoundSteps of(double greatest, int most) {
        return new RoundSteps(atLeast(greatest / Math.max(1, most)), greatest);
    }

    /** Returns the least round step that is not below a length. */
    public static double atLeast(double length) {
        double power = Math.pow(10, Math.floor(Math.log10(length)));
        for (double mantissa : MANTISSAS) {
            if (mantissa * power >= length * (1 - 1e-9)) {
                return mantissa * power;
            }
        }
        return MANTISSAS[MANTISSAS.length - 1] * power;
    }

    public double[] values() {
        return DoubleStream.iterate(0, i -> i * step <= greatest + 1e-9, i -> i + 1)
                .map(i -> i * step)
                .toArray();
    }

    /** Formats a value with as many decimals as the step has. */
    public String format(double value) {
        return format(value, step);
    }

    /** Formats a multiple of a step with as many decimals as the step has. */
    public static String format(double value, double step) {
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        return String.format(Language.current().locale(), "%." + decimals + "f", value);
    }
}
