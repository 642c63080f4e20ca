package weltwright.camera.lens;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.PinholeCamera;
import weltwright.ground.sheet.LensCalibration;
import weltwright.image.Photo;
import weltwright.image.metadata.CameraIdentity;

/**
 * The lens of one phone or camera, as several photos of the reference sheet told it ({@link LensCalibration}). Held by
 * the picture's diagonal, so it serves photos of any resolution.
 *
 * @param name what the user calls it
 * @param camera as Exif names it; empty where the photos did not say
 * @param exifFocal35mm what Exif says of its focal length, which tells the lenses of one phone apart; empty likewise
 * @param longOverShort the picture's longer side over its shorter one; a cropped picture is another lens's
 * @param focal35mm focal length in 35 mm terms, by the diagonal
 * @param k1 first radial term, as {@link PinholeCamera} has it
 * @param k2 second radial term
 * @param errors how far off these may be
 * @param views how many photos it comes from
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
    /** Diagonal of the 36 × 24 mm frame that "35 mm terms" refer to. */
    public static final double DIAGONAL_35MM = Math.hypot(36, 24);

    /**
     * A lens moves as it focuses: from 300 mm to 600 mm a phone's main lens of 6 mm gets shorter by 1 %. Half of that
     * either way.
     */
    private static final double FOCUS_SIGMA = 0.005;

    /** Sides of pictures are whole pixels, and some cameras cut a few off. */
    private static final double SAME_SHAPE = 0.01;

    /** Exif rounds to whole millimetres. */
    private static final double SAME_FOCAL_MM = 0.51;

    /**
     * Standard errors and how they hang together.
     *
     * @param focal of the focal length, as a part of it
     * @param k1 of the first radial term
     * @param k2 of the second
     * @param focalWithK1 correlation of the two errors, from -1 to 1
     * @param focalWithK2 likewise
     * @param k1WithK2 likewise
     */
    public record Errors(double focal, double k1, double k2, double focalWithK1, double focalWithK2, double k1WithK2) {

        /**
         * The errors that a covariance tells.
         *
         * @param covariance of (ln focal, k1, k2)
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

    /** The same lens without the camera's name: all that measuring needs, and all that a job keeps of it. */
    public CalibratedLens withoutCamera() {
        return new CalibratedLens(
                name, Optional.empty(), exifFocal35mm, longOverShort, focal35mm, k1, k2, errors, views);
    }

    /** Whether a photo says of itself that it was taken through this lens, and not cropped since. */
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

    /** Whether a photo has the shape of those that it comes from, and so can be one of this lens. */
    public boolean hasShapeOf(Photo photo) {
        return Math.abs(longOverShort(photo) / longOverShort - 1) < SAME_SHAPE;
    }

    /** What it tells beforehand of a photo taken with it, at whatever distance it was focused. */
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
