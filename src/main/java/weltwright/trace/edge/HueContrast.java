package weltwright.trace.edge;

import weltwright.geometry.fit.FloatMedian;

/**
 * Measures how much the hue changes across a knife's edge at each sample of a band. A shadow darkens paper and hardly
 * tints it, and steel as bright as the shadow beside it is seldom of the paper's hue, so hue finds an edge where
 * brightness does not. Photos store hue coarsely (JPEG for each second pixel, in blocks), so means over a few pixels
 * are compared.
 */
final class HueContrast {
    /** Width of the mean on either side: two samples of a JPEG's hue; chosen by eye. */
    private static final int SIDE_PX = 4;

    /** Distance of rows outside whose difference is the scatter of hue; chosen by eye. */
    private static final int APART_ROWS = 10;

    /** Least standard deviation of hue, by rounding and compression, in grey levels; chosen by eye. */
    private static final double LEAST_SIGMA = 0.4;

    /** Difference of hues due to chance, in standard deviations; chosen by eye. */
    private static final double CHANCE = 2;

    /** Two values for each sample: blue − red, and green − the mean of both. */
    private final float[] hue;

    private final int width;
    private final int side;
    private final double[] sigma;

    private HueContrast(float[] colour, int rows, int width, double samplesPerPx) {
        this.width = width;
        side = (int) Math.round(SIDE_PX * samplesPerPx);
        hue = new float[2 * rows * width];
        for (int i = 0; i < rows * width; i++) {
            hue[2 * i] = colour[3 * i] - colour[3 * i + 2];
            hue[2 * i + 1] = colour[3 * i + 1] - (colour[3 * i] + colour[3 * i + 2]) / 2;
        }
        sigma = new double[] {sigma(0, rows), sigma(1, rows)};
    }

    /**
     * Measures the change of hue across a band.
     *
     * @param colour of the band, row by row from inside to outside: blue, green, red
     * @param rows of the band
     * @param samplesPerPx samples per pixel across the edge
     * @return for each sample the change of hue beyond chance, in standard deviations of the ground's own hue
     */
    static float[] across(float[] colour, int rows, int width, double samplesPerPx) {
        HueContrast steps = new HueContrast(colour, rows, width, samplesPerPx);
        float[] across = new float[rows * width];
        for (int i = 0; i < across.length; i++) {
            across[i] = (float) Math.max(0, steps.at(i) - CHANCE);
        }
        return across;
    }

    /** Returns the scatter of one of the two values along the band's outermost samples. */
    private double sigma(int which, int rows) {
        int side = Math.max(1, width / 8);
        float[] off = new float[side * Math.max(0, rows - APART_ROWS)];
        for (int j = 0; j < off.length; j++) {
            int at = 2 * (j / side * width + width - 1 - j % side) + which;
            off[j] = Math.abs(hue[at] - hue[at + 2 * APART_ROWS * width]);
        }
        return Math.hypot(LEAST_SIGMA, FloatMedian.normalSigma(off));
    }

    private double at(int sample) {
        int k = sample % width;
        int reach = Math.min(side, Math.min(k, width - 1 - k));
        double square = 0;
        for (int h = 0; h < 2; h++) {
            double step = 0;
            for (int j = 1; j <= reach; j++) {
                step += hue[2 * (sample + j) + h] - hue[2 * (sample - j) + h];
            }
            // Near the band's border fewer samples are compared, and weigh less.
            step /= side * sigma[h];
            square += step * step;
        }
        return Math.sqrt(square);
    }
}
