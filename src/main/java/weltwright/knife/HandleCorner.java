package weltwright.knife;

import weltwright.geometry.fit.SymmetricSystem;

/**
 * Where one side of an outline passes from handle to blade, told by the line at which the handle is seen to end and by
 * the outline's own shape together.
 *
 * <p>The side is taken for two smooth pieces that meet, a parabola each: a corner and a mere change of curvature are
 * both places where one ends and the other begins. How likely a place is follows from how far the side departs from the
 * best two pieces that part there (a change point, by maximum likelihood) times how likely the line makes it; what
 * comes out is the mean and the standard deviation of that. Where the side runs through smoothly, only the line tells;
 * where the line is hardly seen, the corner.
 *
 * @param x in the outline's frame, in mm
 * @param sigmaMm its standard deviation
 */
record HandleCorner(double x, double sigmaMm) {
    /** The two pieces reach this far beyond where they may part. */
    private static final double PIECE_MM = 3;

    private static final double STEP_MM = 0.1;

    /** A lens rounds off what is this near to a corner. */
    private static final double ROUNDED_MM = 0.3;

    /**
     * What the outline of a good photo is known to, half of what it is off in 95 of 100 points; neighbours err alike.
     */
    private static final double NOISE_MM = 0.08;

    private static final double ALIKE_MM = 2;

    /** Of two parabolas that meet in a point. */
    private static final int PARAMETERS = 5;

    /** The place is sought this many standard deviations from the line, and this much besides. */
    private static final double SEARCH_SIGMAS = 2.5;

    private static final double SEARCH_MM = 0.6;

    /**
     * The corner of a thick handle's outline may lie above or below the mid-plane, and then is seen farther on or back
     * than the line meets the outline: by up to 0.7 of the bow, as a step is; this is the standard deviation of that.
     */
    private static final double OFF_BY_BOW = 0.7 / Math.sqrt(3);

    /** One line in twenty is something else than the handle's end. */
    private static final double ASTRAY = 0.05;

    /** @param above whether on the side of positive y */
    static HandleCorner find(OutlineSides sides, boolean above, HandleEndLine end) {
        double line = end.at(above ? sides.upper(end.x()) : sides.lower(end.x()));
        double search = SEARCH_MM + SEARCH_SIGMAS * end.sigmaMm();
        int n = (int) Math.round(2 * (search + PIECE_MM) / STEP_MM);
        int margin = (int) Math.round(PIECE_MM / STEP_MM);
        int rounded = (int) Math.round(ROUNDED_MM / STEP_MM);
        double from = line - search - PIECE_MM;
        double[] y = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            y[i] = sides.outward(above, from + i * STEP_MM);
        }
        double[] unfit = new double[n - 2 * margin + 1];
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < unfit.length; k++) {
            unfit[k] = unfit(y, margin + k, rounded);
            least = Math.min(least, unfit[k]);
        }
        double variance = Math.max(NOISE_MM * NOISE_MM, least / (n - 2 * rounded - PARAMETERS));
        double[] corner = new double[unfit.length];
        for (int k = 0; k < corner.length; k++) {
            corner[k] = Math.exp(-(unfit[k] - least) / (2 * variance) * STEP_MM / ALIKE_MM);
        }
        corner = blurred(corner, OFF_BY_BOW * end.bowMm() / STEP_MM);
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int k = 0; k < unfit.length; k++) {
            double off = -search + k * STEP_MM;
            double deviations = off / end.sigmaMm();
            double likely = corner[k]
                    * ((1 - ASTRAY) * Math.exp(-deviations * deviations / 2) / (end.sigmaMm() * Math.sqrt(2 * Math.PI))
                            + ASTRAY / (2 * search));
            sum += likely;
            mean += likely * off;
            square += likely * off * off;
        }
        mean /= sum;
        return new HandleCorner(line + mean, Math.hypot(STEP_MM, Math.sqrt(Math.max(0, square / sum - mean * mean))));
    }

    /** Values blurred by a normal distribution; they end with those that there are. */
    private static double[] blurred(double[] values, double sigma) {
        if (sigma == 0) {
            return values;
        }
        double[] blurred = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            double weights = 0;
            for (int k = 0; k < values.length; k++) {
                double weight = Math.exp(-(k - i) * (k - i) / (2 * sigma * sigma));
                blurred[i] += weight * values[k];
                weights += weight;
            }
            blurred[i] /= weights;
        }
        return blurred;
    }

    /** The sum of squares by which values evenly spaced depart from the best two parabolas that meet at one of them. */
    private static double unfit(double[] y, int corner, int rounded) {
        double[][] normal = new double[PARAMETERS][PARAMETERS];
        double[] right = new double[PARAMETERS];
        double squares = 0;
        for (int i = 0; i < y.length; i++) {
            if (Math.abs(i - corner) < rounded) {
                continue;
            }
            double u = (double) (i - corner) / y.length;
            double[] power = u < 0 ? new double[] {1, u, u * u, 0, 0} : new double[] {1, 0, 0, u, u * u};
            for (int a = 0; a < PARAMETERS; a++) {
                for (int b = 0; b < PARAMETERS; b++) {
                    normal[a][b] += power[a] * power[b];
                }
                right[a] += power[a] * y[i];
            }
            squares += y[i] * y[i];
        }
        double[] solved = new SymmetricSystem(normal).solve(right);
        for (int a = 0; a < PARAMETERS; a++) {
            squares -= solved[a] * right[a];
        }
        return Math.max(0, squares);
    }
}
