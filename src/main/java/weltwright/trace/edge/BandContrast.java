package weltwright.trace.edge;

import java.util.Arrays;
import java.util.stream.IntStream;
import weltwright.geometry.fit.FloatMedian;
import weltwright.trace.appearance.ColourStatistics;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/**
 * How much each place of a band along a knife's outline looks like its edge. The band has a row for each point of the
 * outline, from well inside to well outside.
 *
 * <p>Three cases:
 *
 * <ol>
 *   <li>The colours well inside and well outside differ clearly: their difference is what the edge steps through. Taken
 *       is the derivative across the edge along that difference, smoothed as Canny (1986) found best for a step in
 *       noise; grain and glints of other colours drop out. Where the ground has a printed line, only the part of the
 *       difference counts that the line's own colour does not share.
 *   <li>On a ground as grey as steel they may hardly differ: then which side is brighter at the edge itself, where the
 *       paper lies in the blade's own shadow and a bevel may shine, is not to be told from farther off. Taken is any
 *       step, less the slope that goes on to both sides of it, as a soft shadow's does. Where the ground is blank, a
 *       change of hue counts besides ({@link HueContrast}). On other grounds steps of any kind would only lead to the
 *       lines of the blade's grind.
 *   <li>Black print comes near, so that white and black take turns outside: taken is how fast the colour leaves that of
 *       the inside.
 * </ol>
 *
 * @param path the above, for each sample, row by row: in it the edge is sought
 * @param slope from it the edge's place on a row is read
 * @param perPx samples to the pixel
 */
record BandContrast(float[] path, float[] slope, double perPx) {
    /** Rows over which the colours inside and outside are judged, to either side. */
    private static final int COLOUR_ROWS = 20;

    /**
     * Among lines, sides that differ by less than the first standard deviations hardly differ; by more than the second,
     * clearly.
     */
    private static final double HARDLY = 4;

    private static final double CLEARLY = 8;

    /** How far a slope must go on to be no edge: the blur of a sharp photo's edge ends within that. */
    private static final int GOES_ON_PX = 3;

    /** Next to black print an edge is believed this much: print is the stronger by far. */
    private static final double TRUST_AT_PRINT = 0.2;

    /** A colour that differs from the inside's by this many grey levels is not the inside. */
    private static final double LEFT_INSIDE = 40;

    /** What leaving the inside's colour within a pixel counts for, next to a clear edge elsewhere. */
    private static final double LEAVING = 30;

    /**
     * The square of a step that noise alone makes in three channels is on average this many times a pixel's variance:
     * of neighbours that share half their noise, each channel's step has 0.44 of it.
     */
    private static final double BY_NOISE = 3 * 0.44;

    /** Rows so far apart are noisy each by itself. */
    private static final int APART_ROWS = 8;

    /** What a change of hue counts for by each standard deviation, next to steps of brightness. */
    private static final double HUE = 0.25;

    /**
     * @param colour smoothed colour of each sample, row by row: blue, green, red
     * @param steady the same, smoothed farther along the edge; asked for on a ground as grey as steel alone
     * @param print on the ground at each sample
     * @param rows of the band; the last is followed by the first
     * @param perPx samples to the pixel
     * @param ground on which the knife lies
     */
    static BandContrast of(
            float[] colour, float[] steady, GroundPrint[] print, int rows, double perPx, GroundAppearance ground) {
        int width = print.length / rows;
        ChannelMixture steps = new ChannelMixture(colour, rows, width);
        double[] line = unit(ground.lineColour());
        boolean isRuled = dot(line, line) > 0;
        // On ruled paper the lines have a hue, too, and would lead along them.
        float[] hue = ground.isSteelGrey() && !isRuled
                ? HueContrast.across(steady, rows, width, perPx)
                : new float[print.length];
        double noise = ground.isSteelGrey() ? noise(steady, print, rows, width) : ColourStatistics.NOISE;
        BandContrast band = new BandContrast(new float[print.length], new float[print.length], perPx);
        IntStream.range(0, rows).parallel().forEach(i -> {
            if (isNearBlack(print, i * width, width)) {
                band.leaving(colour, i, rows, width, print);
            } else {
                ChannelMixture.Mix mix = steps.mix(i, COLOUR_ROWS);
                double clear = !ground.isSteelGrey() ? 1 : isRuled ? clear(mix) : mix.otherThanShade();
                band.stepping(colour, steady, i * width, width, print, mix.weights(), clear, noise, hue, line);
            }
        });
        return band;
    }

    /**
     * Variance of the ground's own colour beside its lines, in grey levels squared: from second differences between
     * rows that noise makes differ by themselves, along the outermost samples. A shadow's slope leaves none.
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

    /** Among lines any step would lead along them, so there a difference that stands out is believed. */
    private static double clear(ChannelMixture.Mix mix) {
        return Math.max(0, Math.min(1, (mix.apart() - HARDLY) / (CLEARLY - HARDLY)));
    }

    private static boolean isNearBlack(GroundPrint[] print, int row, int width) {
        for (int k = row; k < row + width; k++) {
            if (print[k] == GroundPrint.BLACK) {
                return true;
            }
        }
        return false;
    }

    private void stepping(
            float[] colour,
            float[] steady,
            int row,
            int width,
            GroundPrint[] print,
            double[] across,
            double clear,
            double noise,
            float[] hue,
            double[] line) {
        double[] unshared = unshared(across, line);
        int goesOn = (int) Math.round(GOES_ON_PX * perPx);
        for (int k = 1; k < width - 1; k++) {
            boolean onLine = print[row + k] == GroundPrint.LINE;
            double[] slope = slope(colour, row + k, 1);
            double value = clear * Math.max(0, dot(onLine ? unshared : across, slope));
            if (clear < 1) {
                int reach = Math.min(goesOn, Math.min(k, width - 1 - k));
                double[] step = minus(slope(steady, row + k, 1), slope(steady, row + k, reach), 1);
                double chance = BY_NOISE * (noise - ColourStatistics.NOISE);
                double[] own = onLine ? minus(step, line, dot(step, line)) : step;
                value += (1 - clear) * (Math.sqrt(Math.max(0, dot(own, own) - chance) / noise) + HUE * hue[row + k]);
            }
            path[row + k] = (float) value;
            this.slope[row + k] = (float) value;
        }
    }

    private void leaving(float[] colour, int i, int rows, int width, GroundPrint[] print) {
        double[] inside = new double[3];
        int depth = Math.max(2, width / 4);
        int reach = 3;
        for (int j = -reach; j <= reach; j++) {
            int row = Math.floorMod(i + j, rows) * width;
            for (int k = 0; k < depth; k++) {
                for (int c = 0; c < 3; c++) {
                    inside[c] += colour[3 * (row + k) + c] / (depth * (2 * reach + 1));
                }
            }
        }
        double[] left = new double[width];
        for (int k = 0; k < width; k++) {
            double[] off = new double[3];
            for (int c = 0; c < 3; c++) {
                off[c] = colour[3 * (i * width + k) + c] - inside[c];
            }
            left[k] = Math.min(1, Math.sqrt(dot(off, off)) / LEFT_INSIDE);
        }
        for (int k = 1; k < width - 1; k++) {
            double trust = print[i * width + k] == GroundPrint.BLACK ? TRUST_AT_PRINT : 1;
            double leaves = (left[k + 1] - left[k - 1]) * perPx / 2;
            double[] s = slope(colour, i * width + k, 1);
            path[i * width + k] = (float) Math.max(0, trust * LEAVING * leaves);
            slope[i * width + k] = (float) Math.sqrt(dot(s, s));
        }
    }

    /** The change of colour per pixel across the edge, between the samples that lie so far to both sides. */
    private double[] slope(float[] colour, int sample, int reach) {
        double[] slope = new double[3];
        for (int c = 0; c < 3; c++) {
            slope[c] = (colour[3 * (sample + reach) + c] - colour[3 * (sample - reach) + c]) * perPx / (2.0 * reach);
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

    /** The part of a colour step square to a line's colour, scaled to show a step as high as the whole would. */
    private static double[] unshared(double[] step, double[] line) {
        double shared = dot(step, line);
        double kept = Math.max(0.25, 1 - shared * shared);
        double[] part = minus(step, line, shared);
        for (int c = 0; c < 3; c++) {
            part[c] /= kept;
        }
        return part;
    }
}
