package weltwright.trace.edge;

import weltwright.geometry.fit.FloatMedian;

/**
 * How much the hue changes across each place of a band along a knife's outline. A shadow darkens paper and hardly tints
 * it, and steel that is as bright as the shadow beside it is seldom of the paper's very hue, so this tells where
 * brightness does not. Cameras keep hue coarsely (a JPEG for each second pixel, in blocks), so it is compared over a
 * few pixels to both sides.
 */
final class HueContrast {
    /** Compared are the means over so much to either side. */
    private static final int SIDE_PX = 4;

    /** Rows so far apart, outside, tell how much hue scatters. */
    private static final int APART_ROWS = 10;

    /** Rounding and compression alone put a hue off by so much: standard deviation, in grey levels. */
    private static final double LEAST_SIGMA = 0.4;

    /** Hues differ by so many standard deviations by chance. */
    private static final double CHANCE = 2;

    /** Two for each sample: blue less red, and green less both. */
    private final float[] hue;

    private final int width;
    private final int side;
    private final double[] sigma;

    private HueContrast(float[] colour, int rows, int width, double perPx) {
        this.width = width;
        side = (int) Math.round(SIDE_PX * perPx);
        hue = new float[2 * rows * width];
        for (int i = 0; i < rows * width; i++) {
            hue[2 * i] = colour[3 * i] - colour[3 * i + 2];
            hue[2 * i + 1] = colour[3 * i + 1] - (colour[3 * i] + colour[3 * i + 2]) / 2;
        }
        sigma = new double[] {sigma(0, rows), sigma(1, rows)};
    }

    /**
     * Measures how far the hue changes across a band.
     *
     * @param colour of the band, row by row from inside to outside: blue, green, red
     * @param rows of the band
     * @param perPx samples to the pixel
     * @return for each sample, by how many standard deviations of the ground's own hue the hue changes there, beyond
     *     chance
     */
    static float[] across(float[] colour, int rows, int width, double perPx) {
        HueContrast steps = new HueContrast(colour, rows, width, perPx);
        float[] across = new float[rows * width];
        for (int i = 0; i < across.length; i++) {
            across[i] = (float) Math.max(0, steps.at(i) - CHANCE);
        }
        return across;
    }

    /** How one of the two hues scatters along the band's outermost samples. */
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
            // Fewer samples tell less.
            step /= side * sigma[h];
            square += step * step;
        }
        return Math.sqrt(square);
    }
}
