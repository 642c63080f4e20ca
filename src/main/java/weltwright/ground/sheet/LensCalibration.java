package weltwright.ground.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.adjustment.BundleAdjustment;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.CalibratedLens;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.metadata.CameraIdentity;
import weltwright.message.Messages;
import weltwright.units.PrintScale;

/**
 * Calibrates a lens from several photos of the reference sheet: focal length and two radial terms, with a pose for each
 * photo and a stretch of the print, fitted at once ({@link BundleAdjustment}). Photos tilted to several sides determine
 * the focal length to a few thousandths, which a single one does not.
 */
public final class LensCalibration {
    private static final Messages TEXTS = Messages.of(LensCalibration.class);

    public static final int FEWEST_PHOTOS = 3;

    /** Greatest number of photos; more add no accuracy. Chosen by eye. */
    private static final int MOST_PHOTOS = 20;

    /** Standard deviation of the stretch, by the error of measuring the sheet's bars. Common practice. */
    private static final double STRETCH_SIGMA = 0.0005;

    /** Relative standard deviation of the focal length above which Exif is as good. Chosen by eye. */
    private static final double POOR = 0.01;

    /** Noise of a photo above which its sheet is bent or the photo does not belong to the others. Chosen by eye. */
    private static final double GREATEST_NOISE_PX = 0.6;

    private LensCalibration() {}

    /**
     * Calibrates a lens.
     *
     * @param givenName name of the lens; empty for the camera's name by Exif
     * @param scale the measured lengths of the sheet's bars over the nominal one
     * @throws UserFacingException where the photos are too few, not of one lens, or do not determine it well enough
     */
    public static CalibratedLens of(List<Photo> photos, Optional<String> givenName, PrintScale scale) {
        if (photos.size() < FEWEST_PHOTOS || photos.size() > MOST_PHOTOS) {
            throw new UserFacingException(
                    TEXTS.text("lens-calibration.a-lens-is-measured-from", FEWEST_PHOTOS, MOST_PHOTOS, photos.size()),
                    TEXTS.text("lens-calibration.photograph-the-sheet-four-to"));
        }
        Photo first = photos.get(0);
        checkSameCamera(photos);
        String name = givenName
                .or(() -> first.camera().map(CameraIdentity::toString))
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("lens-calibration.the-photos-do-not-say"),
                        TEXTS.text("lens-calibration.give-the-phone-a-name")));
        List<List<ControlPoint>> observations =
                photos.stream().map(photo -> corners(photo, first, scale)).toList();
        Lens lens = fit(observations, longSide(first), shortSide(first));
        if (lens.errors().focal() > POOR) {
            throw new UserFacingException(
                    TEXTS.text(
                            "lens-calibration.these-photos-tell-the-focal",
                            196 * lens.errors().focal()),
                    TEXTS.text("lens-calibration.photograph-the-sheet-again-tilted"));
        }
        return new CalibratedLens(
                name,
                first.camera(),
                first.focal35mm(),
                CalibratedLens.longOverShort(first),
                lens.focalPx() * CalibratedLens.DIAGONAL_35MM / Math.hypot(first.widthPx(), first.heightPx()),
                lens.k1(),
                lens.k2(),
                lens.errors(),
                photos.size());
    }

    /** A lens in pixels of the pictures it was fitted to. */
    record Lens(double focalPx, double k1, double k2, CalibratedLens.Errors errors) {}

    /**
     * Fits a lens.
     *
     * @param observations control points of each view, in pixels of pictures of one size
     */
    static Lens fit(List<List<ControlPoint>> observations, int widthPx, int heightPx) {
        LensPrior prior = LensPrior.usual(Math.hypot(widthPx, heightPx)).withMountingTolerance();
        BundleAdjustment best = DoubleStream.of(-0.4, 0, 0.4, 0.8)
                .mapToObj(step -> new PinholeCamera(
                        prior.focalPx() * Math.exp(step), (widthPx - 1) / 2.0, (heightPx - 1) / 2.0, 0, 0))
                .map(camera -> new BundleAdjustment(
                                observations,
                                prior,
                                STRETCH_SIGMA,
                                ViewSolver.LEAST_PIXEL_SIGMA,
                                BundleAdjustment.starts(observations, camera))
                        .run())
                .min(Comparator.comparingDouble(BundleAdjustment::cost))
                .orElseThrow();
        for (int v = 0; v < observations.size(); v++) {
            if (best.pixelSigma(v) > GREATEST_NOISE_PX) {
                throw new UserFacingException(
                        TEXTS.text("lens-calibration.the-sheet-in-photo-does", v + 1),
                        TEXTS.text("lens-calibration.leave-that-photo-out-or"));
            }
        }
        double[][] all = best.covariance();
        double[][] covariance = new double[3][];
        Arrays.setAll(covariance, k -> Arrays.copyOf(all[k], 3));
        PinholeCamera camera = best.view(0).camera();
        return new Lens(camera.focalPx(), camera.k1(), camera.k2(), CalibratedLens.Errors.of(covariance));
    }

    private static void checkSameCamera(List<Photo> photos) {
        Photo first = photos.get(0);
        for (Photo photo : photos) {
            boolean same = photo.camera().equals(first.camera())
                    && photo.focal35mm().equals(first.focal35mm())
                    && Math.abs(CalibratedLens.longOverShort(photo) / CalibratedLens.longOverShort(first) - 1) < 0.01;
            if (!same) {
                throw new UserFacingException(
                        TEXTS.text("lens-calibration.was-taken-with-another-camera", photo.name(), first.name()),
                        TEXTS.text("lens-calibration.take-all-photos-with-one"));
            }
        }
    }

    /** Returns the sheet's corners, converted to a landscape picture of the first photo's size. */
    private static List<ControlPoint> corners(Photo photo, Photo first, PrintScale scale) {
        double size = (double) longSide(first) / longSide(photo);
        boolean landscape = photo.widthPx() >= photo.heightPx();
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            List<ControlPoint> corners = new ArrayList<>();
            for (ControlPoint corner : ReferenceSheetFinder.find(picture, scale).corners()) {
                Point px = corner.pixel();
                // Rotates portrait pictures by 90 degrees, since the lens is rotationally symmetric.
                Point turned = landscape ? px : new Point(px.y(), photo.widthPx() - 1 - px.x());
                corners.add(new ControlPoint(
                        corner.onGround(),
                        turned.plus(new Point(0.5, 0.5)).times(size).minus(new Point(0.5, 0.5))));
            }
            return corners;
        } catch (UserFacingException unusable) {
            throw new UserFacingException(
                    TEXTS.text("lens-calibration.cannot-be-used", photo.name()), unusable.getMessage(), unusable);
        }
    }

    private static int longSide(Photo photo) {
        return Math.max(photo.widthPx(), photo.heightPx());
    }

    private static int shortSide(Photo photo) {
        return Math.min(photo.widthPx(), photo.heightPx());
    }
}
