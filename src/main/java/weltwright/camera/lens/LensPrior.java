package weltwright.camera.lens;

import weltwright.camera.PinholeCamera;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * Prior knowledge of a lens: the most probable values and their covariance.
 *
 * @param focalPx focal length, in pixels
 * @param k1 first radial term of {@link PinholeCamera}
 * @param k2 second radial term
 * @param covariance of (ln focalPx, k1, k2), 3 × 3, positive definite
 * @param centreSigma standard deviation of the principal point about the picture's middle, across and down, relative to
 *     the focal length
 */
public record LensPrior(double focalPx, double k1, double k2, double[][] covariance, double centreSigma) {
    /**
     * A standard deviation so small that the principal point stays in the middle. A trace needs no more: an error of
     * the principal point shifts the outline as a whole, and the fitted tilt makes up for its distortion.
     */
    static final double IN_THE_MIDDLE = 1e-5;

    /** Lenses are mounted to within a third of a degree, or half a percent of the picture's diagonal. From memory. */
    private static final double MOUNTED = 0.006;

    /** Standard deviation for a picture cut out of an unknown part of a larger one. Chosen by eye. */
    private static final double CUT_OUT = 0.25;

    /** Standard deviations of k1 and k2 over phone lenses, after the phone's own correction. From memory. */
    private static final double K1_SIGMA = 0.06;

    private static final double K2_SIGMA = 0.03;

    /** Focal length of a phone's main camera in 35 mm terms. Common practice. */
    private static final double USUAL_FOCAL_35MM = 27;

    /** Standard deviation of the logarithm of the focal length over the lenses in use. Chosen by eye. */
    private static final double USUAL_FOCAL_SIGMA = 0.5;

    /**
     * Returns the prior for a lens that nothing is known of.
     *
     * @param diagonalPx diagonal of the picture, in pixels
     */
    public static LensPrior usual(double diagonalPx) {
        return ofFocal(USUAL_FOCAL_35MM * diagonalPx / CalibratedLens.DIAGONAL_35MM, USUAL_FOCAL_SIGMA);
    }

    /**
     * Returns the prior for a lens of which only the focal length is known.
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

    /** Returns this prior with a principal point as uncertain as lenses are mounted, for calibration. */
    public LensPrior withMountingTolerance() {
        return new LensPrior(focalPx, k1, k2, covariance, MOUNTED);
    }

    /** Returns this prior with the principal point of a picture that was cut out of a larger one. */
    public LensPrior forCroppedPicture() {
        return new LensPrior(focalPx, k1, k2, covariance, CUT_OUT);
    }

    /** Returns the relative standard deviation of the focal length. */
    public double focalRelativeSigma() {
        return Math.sqrt(covariance[0][0]);
    }

    /** Returns the inverse of the covariance. */
    public double[][] information() {
        return new SymmetricSystem(covariance).inverse();
    }

    /** Returns a lens's deviation from the prior's values, in the order of the covariance. */
    public double[] deviation(double logFocal, double itsK1, double itsK2) {
        return new double[] {logFocal - Math.log(focalPx), itsK1 - k1, itsK2 - k2};
    }
}
