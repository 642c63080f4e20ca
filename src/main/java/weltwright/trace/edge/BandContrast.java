package weltwright.trace.edge;

import java.util.Arrays;
import java.util.stream.IntStream;
import weltwright.geometry.fit.FloatMedian;
import weltwright.trace.appearance.ColourStatistics;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/**
 * The contrast of each sample of a band along a knife's outline: how much it resembles the knife's edge. The band has a
 * row for each point of the outline, from well inside to well outside.
 *
 * <p>Three cases:
 *
 * <ol>
 *   <li>The colours inside and outside differ clearly. The contrast is the derivative across the edge, projected onto
 *       that difference and smoothed by a Gaussian, nearly the best for a step in noise (Canny 1986); grain and glints
 *       of other colours drop out. On a printed line only the part of the difference counts that is orthogonal to the
 *       line's own colour.
 *   <li>On a ground as grey as steel they may hardly differ. Which side is brighter at the edge itself, where the paper
 *       lies in the blade's shadow and a bevel may shine, does not follow from the colours farther off. The contrast is
 *       the length of the step of colour, minus the slope over a wider distance, which a soft shadow has too. On blank
 *       ground a change of hue is added ({@link HueContrast}). On other grounds this case would lead to the lines of
 *       the blade's grind.
 *   <li>Black print is near, so that white and black alternate outside. The contrast is how fast the colour departs
 *       from that of the inside.
 * </ol>
 *
 * @param path for each sample, row by row: the contrast along which the path of the edge is found
 * @param colour smoothed colour of each sample, row by row: blue, green, red, in grey levels
 * @param samplesPerPx samples per pixel across the edge
 */
record BandContrast(float[] path, float[] colour, double samplesPerPx) {
    /** Rows to either side from which the colours inside and outside are taken; chosen by eye. */
    private static final int COLOUR_ROWS = 20;

    /** Separation of the two sides, in standard deviations, up to which case 2 applies on a ruled ground; by eye. */
    private static final double UNCLEAR = 4;

    /** Separation from which case 1 applies there; chosen by eye. */
    private static final double CLEAR = 8;

    /** Distance to either side over which the slope is measured: the blur of a sharp edge ends within it; by eye. */
    private static final int SLOPE_PX = 3;

    /** Weight of a sample next to black print, whose own edge is far stronger; chosen by eye. */
    private static final double WEIGHT_AT_PRINT = 0.2;

    /** Distance from the inside's colour, in grey levels, at which a colour has departed from it; chosen by eye. */
    private static final double DEPARTED = 40;

    /** Contrast of a departure within one pixel, in the units of a clear edge of case 1; chosen by eye. */
    private static final double DEPARTURE_CONTRAST = 30;

    /**
     * Expected squared step between neighbours due to noise, in variances of a pixel: 0.44 in each of three channels,
     * since the smoothed neighbours share half their noise.
     */
    private static final double NOISE_STEP = 3 * 0.44;

    /** Distance of rows whose noise is independent: several standard deviations of the average along; by eye. */
    private static final int APART_ROWS = 8;

    /** Contrast of a change of hue by one standard deviation; chosen by eye. */
    private static final double HUE = 0.25;

    /** Rows to either side over which the inside's colour is averaged next to black print; chosen by eye. */
    private static final int INSIDE_ROWS = 3;

    /** Least part of a step that is kept orthogonal to a line's colour, so that it is not scaled too much; by eye. */
    private static final double LEAST_ORTHOGONAL = 0.25;

    /**
     * Computes the contrast of a band.
     *
     * @param colour smoothed colour of each sample, row by row: blue, green, red, in grey levels
     * @param print on the ground at each sample
     * @param rows of the band; the last is followed by the first
     * @param samplesPerPx samples per pixel across the edge
     * @param ground on which the knife lies
     */
    static BandContrast of(
            float[] colour, GroundPrint[] print, int rows, double samplesPerPx, GroundAppearance ground) {
        int width = print.length / rows;
        ChannelMixture steps = new ChannelMixture(colour, rows, width);
        double[] line = unit(ground.lineColour());
        boolean isRuled = dot(line, line) > 0;
        // On ruled paper the lines have a hue, too, which the path would follow.
        float[] hue = ground.isSteelGrey() && !isRuled
                ? HueContrast.across(colour, rows, width, samplesPerPx)
                : new float[print.length];
        double noise = ground.isSteelGrey() ? noise(colour, print, rows, width) : ColourStatistics.NOISE;
        BandContrast band = new BandContrast(new float[print.length], colour, samplesPerPx);
        IntStream.range(0, rows).parallel().forEach(i -> {
            if (isNearBlack(print, i * width, width)) {
                band.fillFromDeparture(i, rows, width, print);
            } else {
                ChannelMixture.Mix mix = steps.mix(i, COLOUR_ROWS);
                double clear = !ground.isSteelGrey() ? 1 : isRuled ? clearness(mix) : mix.differenceFromShade();
                band.fillFromSteps(i * width, width, print, mix.weights(), clear, noise, hue, line);
            }
        });
        return band;
    }

    /**
     * Returns the variance of the ground's colour beside its lines, in grey levels squared, from second differences of
     * rows with independent noise along the outermost samples. They vanish on the slope of a shadow.
     */
    static double noise(float[] colour, GroundPrint[] print, int rows, int width) {
        int side = Math.max(1, width / 8);
        float[] bends = new float[side * rows * 3];
        int count = 0;
        for (int i = APART_ROWS; i < rows - APART_ROWS; i++) {
            for (int at = (i + 1) * width - side; at < (i + 1) * width; at++) {
                int before = at - APART_ROWS * width;
                int after = at + APART_ROWS * width;
                if (print[before] == GroundPrint.NONE
                        && print[at] == GroundPrint.NONE
                        && print[after] == GroundPrint.NONE) {
                    for (int c = 0; c < 3; c++) {
                        bends[count++] =
                                Math.abs(colour[3 * before + c] - 2 * colour[3 * at + c] + colour[3 * after + c]);
                    }
                }
            }
        }
        double sigma = FloatMedian.normalSigma(Arrays.copyOf(bends, count)) / Math.sqrt(6);
        return Math.max(ColourStatistics.NOISE, sigma * sigma);
    }

    /** Returns the weight of case 1 against case 2 on a ruled ground, on which case 2 would follow the lines. */
    private static double clearness(ChannelMixture.Mix mix) {
        return Math.max(0, Math.min(1, (mix.separation() - UNCLEAR) / (CLEAR - UNCLEAR)));
    }

    private static boolean isNearBlack(GroundPrint[] print, int row, int width) {
        for (int k = row; k < row + width; k++) {
            if (print[k] == GroundPrint.BLACK) {
                return true;
            }
        }
        return false;
    }

    /** @param clear weight of case 1 against case 2, from 0 to 1 */
    private void fillFromSteps(
            int row,
            int width,
            GroundPrint[] print,
            double[] across,
            double clear,
            double noise,
            float[] hue,
            double[] line) {
        double[] orthogonal = orthogonal(across, line);
        int slopeReach = (int) Math.round(SLOPE_PX * samplesPerPx);
        for (int k = 1; k < width - 1; k++) {
            boolean onLine = print[row + k] == GroundPrint.LINE;
            double[] slope = slope(colour, row + k, 1);
            double value = clear * Math.max(0, dot(onLine ? orthogonal : across, slope));
            if (clear < 1) {
                int reach = Math.min(slopeReach, Math.min(k, width - 1 - k));
                double[] step = minus(slope(colour, row + k, 1), slope(colour, row + k, reach), 1);
                double chance = NOISE_STEP * (noise - ColourStatistics.NOISE);
                value += (1 - clear) * (Math.sqrt(Math.max(0, dot(step, step) - chance) / noise) + HUE * hue[row + k]);
            }
            path[row + k] = (float) value;
        }
    }

    private void fillFromDeparture(int i, int rows, int width, GroundPrint[] print) {
        double[] inside = new double[3];
        int depth = Math.max(2, width / 4);
        for (int j = -INSIDE_ROWS; j <= INSIDE_ROWS; j++) {
            int row = Math.floorMod(i + j, rows) * width;
            for (int k = 0; k < depth; k++) {
                for (int c = 0; c < 3; c++) {
                    inside[c] += colour[3 * (row + k) + c] / (depth * (2 * INSIDE_ROWS + 1));
                }
            }
        }
        double[] departure = new double[width];
        for (int k = 0; k < width; k++) {
            double[] off = new double[3];
            for (int c = 0; c < 3; c++) {
                off[c] = colour[3 * (i * width + k) + c] - inside[c];
            }
            departure[k] = Math.min(1, Math.sqrt(dot(off, off)) / DEPARTED);
        }
        for (int k = 1; k < width - 1; k++) {
            double weight = print[i * width + k] == GroundPrint.BLACK ? WEIGHT_AT_PRINT : 1;
            double change = (departure[k + 1] - departure[k - 1]) * samplesPerPx / 2;
            path[i * width + k] = (float) Math.max(0, weight * DEPARTURE_CONTRAST * change);
        }
    }

    /** Returns the change of colour per pixel across the edge, between the samples {@code reach} to both sides. */
    private double[] slope(float[] colour, int sample, int reach) {
        double[] slope = new double[3];
        for (int c = 0; c < 3; c++) {
            slope[c] = (colour[3 * (sample + reach) + c] - colour[3 * (sample - reach) + c])
                    * samplesPerPx
                    / (2.0 * reach);
        }
        return slope;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] minus(double[] a, double[] b, double times) {
        return new double[] {a[0] - times * b[0], a[1] - times * b[1], a[2] - times * b[2]};
    }

    private static double[] unit(double[] v) {
        double length = Math.sqrt(dot(v, v));
        return length == 0 ? v : new double[] {v[0] / length, v[1] / length, v[2] / length};
    }

    /** Returns the part of a colour step orthogonal to a line's colour, scaled so that the step keeps its height. */
    private static double[] orthogonal(double[] step, double[] line) {
        double shared = dot(step, line);
        double kept = Math.max(LEAST_ORTHOGONAL, 1 - shared * shared);
        double[] part = minus(step, line, shared);
        for (int c = 0; c < 3; c++) {
            part[c] /= kept;
        }
        return part;
    }
}
