package weltwright.trace.segment;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;

/**
 * Counts colours in bins of brightness and hue, and estimates their density by a Gaussian kernel (Parzen 1962).
 *
 * <p>Hue is the difference of blue, and of red, from the mean of the three channels. Its bins are narrow for greys and
 * wider for strong colours. Bins of one hue lie in a row, by brightness, so that the kernel works on whole rows. Most
 * rows hold no colour, and few are asked for.
 */
final class ColourHistogram {
    /** Width of a bin of brightness, in units of the relative reflectance; chosen by eye. */
    private static final double BRIGHT = 2;

    /** Difference of a channel from the mean up to which a colour is nearly grey, in the same units; chosen by eye. */
    private static final double GREY = 1;

    /** Bins of that difference; chosen by eye. */
    private static final double GREY_BINS = 5.5;

    /** Bins of brightness: up to the brightest relative reflectance. */
    private static final int LEVELS = 128;

    /** Bins of each of the two differences; chosen by eye. */
    private static final int HUES = 56;

    /** Number of all bins. */
    static final int BINS = HUES * HUES * LEVELS;

    /** Standard deviation of the kernel, in bins: about the grain of paper; chosen by eye. */
    private static final double KERNEL_BINS = 1.5;

    private static final float[] KERNEL = kernel();

    private static final int REACH = KERNEL.length / 2;

    /** Counts by rows of one hue; null where there are none. */
    private final float[][] counts = new float[HUES * HUES][];

    /** Adds a colour of a bin, by what the bin grows by. */
    void add(int bin, double weight) {
        int row = bin / LEVELS;
        if (counts[row] == null) {
            counts[row] = new float[LEVELS];
        }
        counts[row][bin % LEVELS] += (float) weight;
    }

    /** Returns the bin of the colour at an index into relative reflectances, three to the pixel. */
    static int bin(float[] bgr, int at) {
        return bin(bgr, at, 1);
    }

    /**
     * Returns the bin of a shade of a colour.
     *
     * @param bgr relative reflectances, three to the pixel, the colour's beginning at the index {@code at}
     * @param shade factor of its brightness
     */
    static int bin(float[] bgr, int at, double shade) {
        return bin(shade * bgr[at], shade * bgr[at + 1], shade * bgr[at + 2]);
    }

    private static int bin(double b, double g, double r) {
        double mean = (b + g + r) / 3.0;
        int bright = (int) Math.min(LEVELS - 1, mean / BRIGHT);
        return (hueBin(b - mean) * HUES + hueBin(r - mean)) * LEVELS + bright;
    }

    /** Returns the bin of a channel's difference from the mean: narrow for greys, wider for colours (inverse sinh). */
    private static int hueBin(double difference) {
        double scaled = Math.abs(difference) / GREY;
        double bins = Math.copySign(Math.log(scaled + Math.sqrt(scaled * scaled + 1)), difference) * GREY_BINS;
        return (int) Math.max(0, Math.min(HUES - 1, Math.round(bins) + HUES / 2));
    }

    /** Returns the density of the colours: the counts, divided by a number, spread by the kernel. */
    Density density(double divisor) {
        float[][] alongBrightness = new float[HUES * HUES][];
        for (int row = 0; row < counts.length; row++) {
            alongBrightness[row] = counts[row] == null ? null : spreadAlongBrightness(counts[row], divisor);
        }
        float[][] alongBlue = new float[HUES * HUES][];
        for (int row = 0; row < counts.length; row++) {
            alongBlue[row] = spreadAcrossRows(alongBrightness, row, HUES);
        }
        return new Density(alongBlue);
    }

    private static float[] spreadAlongBrightness(float[] counts, double divisor) {
        float[] spread = new float[LEVELS];
        for (int at = 0; at < LEVELS; at++) {
            float count = (float) (counts[at] / divisor);
            for (int k = Math.max(0, at - REACH); count != 0 && k <= Math.min(LEVELS - 1, at + REACH); k++) {
                spread[k] += count * KERNEL[k - at + REACH];
            }
        }
        return spread;
    }

    /**
     * Returns what the kernel spreads to a row along an axis of hue; null where that is nothing.
     *
     * @param rows values to spread; null where there are none
     * @param stride rows from one bin of the axis to the next
     */
    private static float @Nullable [] spreadAcrossRows(float[][] rows, int row, int stride) {
        int at = row / stride % HUES;
        float[] spread = null;
        for (int k = Math.max(0, at - REACH); k <= Math.min(HUES - 1, at + REACH); k++) {
            float[] values = rows[row + (k - at) * stride];
            if (values != null) {
                spread = spread == null ? new float[LEVELS] : spread;
                for (int i = 0; i < LEVELS; i++) {
                    spread[i] += KERNEL[at - k + REACH] * values[i];
                }
            }
        }
        return spread;
    }

    /** A density over the bins, spread along the last axis in the rows that were asked for. */
    static final class Density {
        private static final float[] NOTHING = new float[LEVELS];

        private final float[][] alongBlue;
        private final AtomicReferenceArray<float[]> rows = new AtomicReferenceArray<>(HUES * HUES);

        private Density(float[][] alongBlue) {
            this.alongBlue = alongBlue;
        }

        /** Returns the density at a bin. */
        float at(int bin) {
            int row = bin / LEVELS;
            float[] values = rows.get(row);
            if (values == null) {
                float[] spread = spreadAcrossRows(alongBlue, row, 1);
                values = spread == null ? NOTHING : spread;
                rows.set(row, values);
            }
            return values[bin % LEVELS];
        }
    }

    private static float[] kernel() {
        int reach = (int) Math.ceil(3 * KERNEL_BINS);
        float[] kernel = new float[2 * reach + 1];
        for (int k = -reach; k <= reach; k++) {
            kernel[k + reach] = (float) Math.exp(-k * k / (2 * KERNEL_BINS * KERNEL_BINS));
        }
        double sum = 0;
        for (float part : kernel) {
            sum += part;
        }
        for (int k = 0; k < kernel.length; k++) {
            kernel[k] /= (float) sum;
        }
        return kernel;
    }
}
