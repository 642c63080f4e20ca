package weltwright.camera.lens;

import weltwright.camera.PinholeCamera;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * What is known of a lens beforehand: likeliest values, and how far off they may be.
 *
 * @param focalPx focal length, in pixels
 * @param k1 first radial term, as {@link PinholeCamera} has it
 * @param k2 second radial term
 * @param covariance of (ln focalPx, k1, k2), 3 × 3, positive definite
 * @param centreSigma how far from the picture's middle the optical axis may meet it: standard deviation across and
 *     down, as a part of the focal length
 */
public record LensPrior(double focalPx, double k1, double k2, double[][] covariance, double centreSigma) {
    /**
     * Where the axis meets the picture moves an outline as a whole, and bends it next to nothing: the tilt that is
     * found makes up for it. So a trace takes it for the middle.
     */
    static final double IN_THE_MIDDLE = 1e-5;

    /** Lenses are mounted to within a third of a degree; half a percent of a picture's diagonal. From memory. */
    private static final double MOUNTED = 0.006;

    /** A picture that was cut out of a larger one may have its middle anywhere in that. */
    private static final double CUT_OUT = 0.25;

    /** Lenses of phones, after their own correction, keep k1 and k2 within about this. From memory. */
    private static final double K1_SIGMA = 0.06;

    private static final double K2_SIGMA = 0.03;

    /**
     * Focal length of a phone's main camera in 35 mm terms, and how widely the lenses in use scatter. Common practice.
     */
    private static final double USUAL_FOCAL_35MM = 27;

    private static final double USUAL_FOCAL_SIGMA = 0.5;

    /** A lens of which nobody said anything; {@code diagonalPx} is the picture's. */
    public static LensPrior usual(double diagonalPx) {
        return ofFocal(USUAL_FOCAL_35MM * diagonalPx / CalibratedLens.DIAGONAL_35MM, USUAL_FOCAL_SIGMA);
    }

    /**
     * A lens of which the focal length is known, and of the rest only what holds for all of them.
     *
     * @param relativeSigma standard deviation of the logarithm of the focal length
     */
    public static LensPrior ofFocal(double focalPx, double relativeSigma) {
        return new LensPrior(
                focalPx,
                0,
                0,
                new double[][] {
                    {relativeSigma * relativeSigma, 0, 0},
                    {0, K1_SIGMA * K1_SIGMA, 0},
                    {0, 0, K2_SIGMA * K2_SIGMA}
                },
                IN_THE_MIDDLE);
    }

    /** The same lens, mounted no better than lenses are: where it matters how well a ground tells the focal length. */
    public LensPrior withMountingTolerance() {
        return new LensPrior(focalPx, k1, k2, covariance, MOUNTED);
    }

    /** The same lens, should the picture have been cut out of a larger one. */
    public LensPrior forCroppedPicture() {
        return new LensPrior(focalPx, k1, k2, covariance, CUT_OUT);
    }

    /** Standard deviation of the focal length, as a part of it. */
    public double focalRelativeSigma() {
        return Math.sqrt(covariance[0][0]);
    }

    /** The inverse of the covariance. */
    public double[][] information() {
        return new SymmetricSystem(covariance).inverse();
    }

    /** A camera's lens less this one's likeliest values, in the order of the covariance. */
    public double[] deviation(double logFocal, double itsK1, double itsK2) {
        return new double[] {logFocal - Math.log(focalPx), itsK1 - k1, itsK2 - k2};
    }
}
