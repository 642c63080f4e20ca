package weltwright.camera.lens;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.PinholeCamera;
import weltwright.image.Photo;
import weltwright.image.metadata.CameraIdentity;

/**
 * The lens of a phone or camera as calibrated from photos of the reference sheet. The focal length is relative to the
 * picture's diagonal, so that it applies to photos of any resolution.
 *
 * @param name the user's name for it
 * @param camera make and model from Exif; empty where the photos state none
 * @param exifFocal35mm focal length by Exif, which distinguishes the lenses of one phone; empty where the photos state
 *     none
 * @param longOverShort aspect ratio of the pictures, longer side over shorter; others were cropped or taken by another
 *     lens
 * @param focal35mm calibrated focal length in 35 mm terms, by the diagonal
 * @param k1 first radial term of {@link PinholeCamera}
 * @param k2 second radial term
 * @param errors standard errors
 * @param views number of photos it was calibrated from
 */
public record CalibratedLens(
        String name,
        Optional<CameraIdentity> camera,
        OptionalDouble exifFocal35mm,
        double longOverShort,
        double focal35mm,
        double k1,
        double k2,
        Errors errors,
        int views) {
    /** Diagonal of the 36 mm by 24 mm frame that "35 mm terms" refer to. */
    public static final double DIAGONAL_35MM = Math.hypot(36, 24);

    /**
     * Relative standard deviation of the focal length by focusing. By the thin lens equation, the image distance of a 6
     * mm lens shrinks by 1 % from 300 mm to 600 mm; half of that to either side.
     */
    private static final double FOCUS_SIGMA = 0.005;

    /**
     * Greatest relative difference of aspect ratios that count as equal: some cameras cut off a few rows. Chosen by
     * eye.
     */
    private static final double SAME_SHAPE = 0.01;

    /** Greatest difference of focal lengths that count as equal, as Exif rounds to whole millimetres. */
    private static final double SAME_FOCAL_MM = 0.51;

    /**
     * Standard errors and their correlations.
     *
     * @param focal of the focal length, relative
     * @param k1 of the first radial term
     * @param k2 of the second radial term
     * @param focalWithK1 correlation of focal length and first term, -1 to 1
     * @param focalWithK2 correlation of focal length and second term
     * @param k1WithK2 correlation of the two terms
     */
    public record Errors(double focal, double k1, double k2, double focalWithK1, double focalWithK2, double k1WithK2) {

        /**
         * Converts a covariance.
         *
         * @param covariance of (ln focal, k1, k2), 3 × 3
         */
        public static Errors of(double[][] covariance) {
            double f = Math.sqrt(covariance[0][0]);
            double a = Math.sqrt(covariance[1][1]);
            double b = Math.sqrt(covariance[2][2]);
            return new Errors(
                    f, a, b, covariance[0][1] / (f * a), covariance[0][2] / (f * b), covariance[1][2] / (a * b));
        }

        private double[][] covariance() {
            return new double[][] {
                {focal * focal, focalWithK1 * focal * k1, focalWithK2 * focal * k2},
                {focalWithK1 * focal * k1, k1 * k1, k1WithK2 * k1 * k2},
                {focalWithK2 * focal * k2, k1WithK2 * k1 * k2, k2 * k2}
            };
        }
    }

    /** Returns the lens without make and model, as a job stores it. */
    public CalibratedLens withoutCamera() {
        return new CalibratedLens(
                name, Optional.empty(), exifFocal35mm, longOverShort, focal35mm, k1, k2, errors, views);
    }

    /** Whether a photo was taken through this lens by its Exif data, and is not cropped. */
    public boolean isLensOf(Photo photo) {
        return camera.isPresent()
                && camera.equals(photo.camera())
                && hasShapeOf(photo)
                && exifFocal35mm.isPresent() == photo.focal35mm().isPresent()
                && (exifFocal35mm.isEmpty()
                        || Math.abs(exifFocal35mm.getAsDouble()
                                        - photo.focal35mm().getAsDouble())
                                < SAME_FOCAL_MM);
    }

    /** Whether a photo has the aspect ratio of this lens's pictures. */
    public boolean hasShapeOf(Photo photo) {
        return Math.abs(longOverShort(photo) / longOverShort - 1) < SAME_SHAPE;
    }

    /** Returns the prior for a photo taken through this lens, focused at any distance. */
    public LensPrior prior(Photo photo) {
        double[][] covariance = errors.covariance();
        covariance[0][0] += FOCUS_SIGMA * FOCUS_SIGMA;
        double pxPer35mm = Math.hypot(photo.widthPx(), photo.heightPx()) / DIAGONAL_35MM;
        return new LensPrior(focal35mm * pxPer35mm, k1, k2, covariance, LensPrior.IN_THE_MIDDLE);
    }

    public static double longOverShort(Photo photo) {
        return (double) Math.max(photo.widthPx(), photo.heightPx()) / Math.min(photo.widthPx(), photo.heightPx());
    }
}
