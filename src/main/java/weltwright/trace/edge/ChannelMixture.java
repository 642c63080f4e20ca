package weltwright.trace.edge;

import weltwright.trace.appearance.ColourStatistics;

/**
 * Finds the mixture of the colour channels that separates the inside of a band best from its outside, by
 * {@link ColourStatistics.Discriminant}.
 *
 * <p>Assumes that the inner quarter of the band lies on one side of the edge and the outer quarter on the other.
 */
final class ChannelMixture {
    /** Brightness, relative to the outside, down to which ambient light leaves shaded paper; chosen by eye. */
    private static final double SOFT_SHADE = 0.6;

    /** Brightness below which nothing is shade; chosen by eye. */
    private static final double DARK = 0.45;

    /** Tint that skylight gives to a shade, as the range of the channels over their mean; chosen by eye. */
    private static final double SHADE_TINT = 0.08;

    /** Tint above which nothing is shade; chosen by eye. */
    private static final double HUE = 0.16;

    private final double[][] cumulative;
    private final int rows;

    /**
     * Accumulates the colours of a band.
     *
     * @param colour of the band, row by row: blue, green, red
     * @param rows of the band; the last is followed by the first
     */
    ChannelMixture(float[] colour, int rows, int width) {
        this.rows = rows;
        int side = Math.max(2, width / 4);
        cumulative = new double[2][(rows + 1) * ColourStatistics.SIZE];
        for (int i = 0; i < rows; i++) {
            for (int s = 0; s < 2; s++) {
                double[] into = cumulative[s];
                System.arraycopy(
                        into, i * ColourStatistics.SIZE, into, (i + 1) * ColourStatistics.SIZE, ColourStatistics.SIZE);
                int first = s == 0 ? 0 : width - side;
                for (int k = first; k < first + side; k++) {
                    ColourStatistics.add(into, (i + 1) * ColourStatistics.SIZE, colour, 3 * (i * width + k));
                }
            }
        }
    }

    /**
     * A mixture of the channels.
     *
     * @param weights of blue, green and red, scaled so that each side has variance 1 and the step outwards is positive
     * @param separation that step: the distance of the sides in standard deviations within them
     * @param near mean colour of the inside
     * @param far mean colour of the outside
     */
    record Mix(double[] weights, double separation, double[] near, double[] far) {
        /**
         * Returns 0 where the inside may be the outside's material in shade or in a better light, to 1 where it is
         * darker than a soft shade or of another hue.
         */
        double differenceFromShade() {
            double most = 0;
            double least = Double.POSITIVE_INFINITY;
            double mean = 0;
            for (int k = 0; k < 3; k++) {
                double ratio = near[k] / Math.max(1, far[k]);
                most = Math.max(most, ratio);
                least = Math.min(least, ratio);
                mean += ratio / 3;
            }
            double darker = (SOFT_SHADE - mean) / (SOFT_SHADE - DARK);
            double hue = ((most - least) / mean - SHADE_TINT) / (HUE - SHADE_TINT);
            return Math.max(0, Math.min(1, Math.max(darker, hue)));
        }
    }

    /**
     * Returns the mixture for a row, from the {@code 2 reach + 1} rows around it or to one side of it, whichever
     * separates the sides best: next to the end of a material the rows of another one are left out.
     */
    Mix mix(int row, int reach) {
        ColourStatistics bestNear = sums(cumulative[0], row, reach);
        ColourStatistics bestFar = sums(cumulative[1], row, reach);
        ColourStatistics.Discriminant best = bestNear.against(bestFar);
        for (int middle : new int[] {row - reach, row + reach}) {
            ColourStatistics near = sums(cumulative[0], middle, reach);
            ColourStatistics far = sums(cumulative[1], middle, reach);
            ColourStatistics.Discriminant parts = near.against(far);
            if (parts.square() > best.square()) {
                best = parts;
                bestNear = near;
                bestFar = far;
            }
        }
        double separation = Math.sqrt(Math.max(1e-12, best.square()));
        double[] w = best.weights();
        return new Mix(
                new double[] {w[0] / separation, w[1] / separation, w[2] / separation},
                separation,
                bestNear.mean(),
                bestFar.mean());
    }

    private ColourStatistics sums(double[] cumulative, int row, int reach) {
        double[] sums = new double[ColourStatistics.SIZE];
        int from = Math.floorMod(row, rows) - reach;
        int to = from + 2 * reach + 1;
        if (to - from >= rows) {
            addRange(sums, cumulative, 0, rows);
        } else if (from < 0) {
            addRange(sums, cumulative, from + rows, rows);
            addRange(sums, cumulative, 0, to);
        } else if (to > rows) {
            addRange(sums, cumulative, from, rows);
            addRange(sums, cumulative, 0, to - rows);
        } else {
            addRange(sums, cumulative, from, to);
        }
        return new ColourStatistics(sums);
    }

    private static void addRange(double[] sums, double[] cumulative, int from, int to) {
        for (int k = 0; k < ColourStatistics.SIZE; k++) {
            sums[k] += cumulative[to * ColourStatistics.SIZE + k] - cumulative[from * ColourStatistics.SIZE + k];
        }
    }
}
