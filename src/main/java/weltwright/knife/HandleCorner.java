package weltwright.knife;

import java.util.Optional;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * Estimates where one side of an outline passes from handle to blade, from the line at which the handle ends in the
 * photo and the shape of the outline.
 *
 * <ol>
 *   <li>The side is modelled as two parabolas that meet at a change point, which may be a corner or a change of
 *       curvature.
 *   <li>The likelihood of each change point follows from the residuals of the best two parabolas (least squares).
 *   <li>It is multiplied by the density of the handle's end line there.
 *   <li>The result is the mean and the standard deviation of the product. On a smooth side the line decides; where the
 *       line is uncertain, the corner.
 * </ol>
 *
 * <p>A step lower than {@link HandleFrontStep} finds is told from a kink by the likelihood of two parabolas that need
 * not meet.
 *
 * @param x in the mid-plane, in the outline's frame, in mm; in the photo the corner is off by {@link HandleEndLine.Rim}
 * @param sigmaMm its standard deviation
 * @param jump the low step there, if the side shows one
 */
record HandleCorner(double x, double sigmaMm, Optional<Jump> jump) {
    /** The two parabolas reach this far beyond the outermost change points. Chosen by eye. */
    private static final double PIECE_MM = 3;

    /** Spacing of samples. Chosen by eye. */
    private static final double STEP_MM = 0.1;

    /** Points nearer than this to a change point are left out, since blur rounds a corner. Chosen by eye. */
    private static final double ROUNDED_MM = 0.3;

    /** Standard deviation of the outline of a good photo, half of its error in 95 of 100 points. */
    private static final double NOISE_MM = 0.08;

    /** Correlation length of the errors of neighbouring points. Chosen by eye. */
    private static final double CORRELATED_MM = 2;

    /** Number of parameters of two parabolas that meet in a point. */
    private static final int PARAMETERS = 5;

    /** Search distance from the line, in standard deviations, and a length that is added. Chosen by eye. */
    private static final double SEARCH_SIGMAS = 2.5;

    private static final double SEARCH_MM = 0.6;

    /** Standard deviation of a uniform distribution, in half its width. */
    private static final double UNIFORM_SIGMA = 1 / Math.sqrt(3);

    /** Probability that the line is not the handle's end. Chosen by eye. */
    private static final double OUTLIER_PROBABILITY = 0.05;

    /** Least height of a step that is told from noise and a kink: three times the noise. */
    private static final double LEAST_JUMP_MM = 3 * NOISE_MM;

    /**
     * By how much a step must be likelier than a kink, as twice the logarithm of the ratio of their likelihoods. Low
     * steps of rendered photos reach 1.6 to 17, sides without a step of the photos of six knives 0.9.
     */
    private static final double LIKELIER = 1.5;

    /**
     * A step between two parabolas.
     *
     * @param x of the step, as it appears
     * @param handleMm distance of the handle's side from the axis there
     * @param bladeMm distance of the blade's side
     */
    record Jump(double x, double handleMm, double bladeMm) {}

    /** @param above whether on the side of positive y */
    static HandleCorner find(OutlineSides sides, boolean above, HandleEndLine end) {
        // The outline turns from the handle's to the blade's between the rim of the front and the beginning of the thin
        // blade; the place is taken to be distributed uniformly.
        double cornerMm = end.rim().cornerMm(above) / 2;
        double cornerSigma = Math.hypot(end.rim().sigmaMm(), cornerMm * UNIFORM_SIGMA);
        double line = end.at(above ? sides.upper(end.x()) : sides.lower(end.x())) + cornerMm;
        double lineSigma = Math.hypot(end.sigmaMm(), cornerSigma);
        double search = SEARCH_MM + SEARCH_SIGMAS * lineSigma;
        int n = (int) Math.round(2 * (search + PIECE_MM) / STEP_MM);
        int margin = (int) Math.round(PIECE_MM / STEP_MM);
        int rounded = (int) Math.round(ROUNDED_MM / STEP_MM);
        double from = line - search - PIECE_MM;
        double[] y = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            y[i] = sides.outward(above, from + i * STEP_MM);
        }
        double[] residual = new double[n - 2 * margin + 1];
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < residual.length; k++) {
            residual[k] = fit(y, margin + k, rounded, false).residual();
            least = Math.min(least, residual[k]);
        }
        double variance = Math.max(NOISE_MM * NOISE_MM, least / (n - 2 * rounded - PARAMETERS));
        double[] corner = new double[residual.length];
        for (int k = 0; k < corner.length; k++) {
            corner[k] = Math.exp(-(residual[k] - least) / (2 * variance) * STEP_MM / CORRELATED_MM);
        }
        corner = blurred(corner, cornerSigma / STEP_MM);
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int k = 0; k < residual.length; k++) {
            double off = -search + k * STEP_MM;
            double deviations = off / end.sigmaMm();
            double likely = corner[k]
                    * ((1 - OUTLIER_PROBABILITY)
                                    * Math.exp(-deviations * deviations / 2)
                                    / (end.sigmaMm() * Math.sqrt(2 * Math.PI))
                            + OUTLIER_PROBABILITY / (2 * search));
            sum += likely;
            mean += likely * off;
            square += likely * off * off;
        }
        mean /= sum;
        double sigma = Math.hypot(STEP_MM, Math.sqrt(Math.max(0, square / sum - mean * mean)));
        return new HandleCorner(line + mean - cornerMm, sigma, jump(y, margin, rounded, line, lineSigma));
    }

    /**
     * Returns the step that explains a side better than a kink does; empty where none does.
     *
     * @param lineX where the step is expected by the handle's end, in the middle of the values
     */
    private static Optional<Jump> jump(double[] y, int margin, int rounded, double lineX, double lineSigma) {
        Pieces[] best = new Pieces[2];
        double[] least = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double x = lineX;
        for (int k = margin; k < y.length - margin; k++) {
            double off = (k - (y.length - 1) / 2.0) * STEP_MM;
            for (int stepped = 0; stepped < 2; stepped++) {
                Pieces fit = fit(y, k, rounded, stepped == 1);
                double unlikely =
                        fit.residual() / (NOISE_MM * NOISE_MM) * STEP_MM / CORRELATED_MM + Math.pow(off / lineSigma, 2);
                if (unlikely < least[stepped]) {
                    least[stepped] = unlikely;
                    best[stepped] = fit;
                    x = stepped == 1 ? lineX + off : x;
                }
            }
        }
        Pieces step = best[1];
        return least[0] - least[1] > LIKELIER && Math.abs(step.after() - step.before()) > LEAST_JUMP_MM
                ? Optional.of(new Jump(x, step.before(), step.after()))
                : Optional.empty();
    }

    /** Returns values convolved with a normal distribution, normalised at the ends. */
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

    /**
     * The best two parabolas.
     *
     * @param residual sum of squares
     * @param before value of the first at the change point
     * @param after value of the second there
     */
    private record Pieces(double residual, double before, double after) {}

    /**
     * Fits two parabolas to evenly spaced values by least squares.
     *
     * @param stepped whether they may differ at the change point, else they meet there
     */
    private static Pieces fit(double[] y, int corner, int rounded, boolean stepped) {
        int parameters = PARAMETERS + (stepped ? 1 : 0);
        double[][] normal = new double[parameters][parameters];
        double[] right = new double[parameters];
        double squares = 0;
        for (int i = 0; i < y.length; i++) {
            if (Math.abs(i - corner) < rounded) {
                continue;
            }
            double u = (double) (i - corner) / y.length;
            double[] power = u < 0 ? new double[] {1, u, u * u, 0, 0, 0} : new double[] {1, 0, 0, u, u * u, 1};
            for (int a = 0; a < parameters; a++) {
                for (int b = 0; b < parameters; b++) {
                    normal[a][b] += power[a] * power[b];
                }
                right[a] += power[a] * y[i];
            }
            squares += y[i] * y[i];
        }
        double[] solved = new SymmetricSystem(normal).solve(right);
        for (int a = 0; a < parameters; a++) {
            squares -= solved[a] * right[a];
        }
        return new Pieces(Math.max(0, squares), solved[0], solved[0] + (stepped ? solved[PARAMETERS] : 0));
    }
}
