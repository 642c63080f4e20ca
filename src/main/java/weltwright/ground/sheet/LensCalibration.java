package weltwright.ground.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
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
import weltwright.units.PrintScale;

/**
 * One lens from several photos of the reference sheet: focal length and two radial terms, common to all of them, a pose
 * for each, and one stretch of the printed sheet, fitted at once ({@link BundleAdjustment}). What none of the photos
 * says by itself, several say together: seen aslant from several sides, the sheet tells the lens to a few thousandths.
 */
public final class LensCalibration {
    public static final int FEWEST_PHOTOS = 3;

    /** Photos of one lens in no more than so many; more say nothing new. */
    private static final int MOST_PHOTOS = 20;

    /** A sheet's bars are measured to about so much of their length. Common practice. */
    private static final double STRETCH_SIGMA = 0.0005;

    /** A lens known no better than this serves no better than Exif does. */
    private static final double POOR = 0.01;

    /** A sheet that is bent, or of other views than the rest, fits so much worse than its corners are found. */
    private static final double GREATEST_NOISE_PX = 0.6;

    private LensCalibration() {}

    /**
     * Measures the lens of a phone from photos of the reference sheet.
     *
     * @param told a name for it; empty to call it what Exif calls the camera
     * @param scale what the sheet's two bars measure, over their nominal length
     * @throws UserFacingException where the photos are too few, not of one lens, or do not tell it well enough
     */
    public static CalibratedLens of(List<Photo> photos, Optional<String> told, PrintScale scale) {
        if (photos.size() < FEWEST_PHOTOS || photos.size() > MOST_PHOTOS) {
            throw new UserFacingException(
                    "A lens is measured from " + FEWEST_PHOTOS + " to " + MOST_PHOTOS + " photos, and " + photos.size()
                            + " are given.",
                    "Photograph the sheet four to eight times, each time tilted to another side.");
        }
        Photo first = photos.get(0);
        checkSameCamera(photos);
        String name = told.or(() -> first.camera().map(CameraIdentity::toString))
                .orElseThrow(() -> new UserFacingException(
                        "The photos do not say which phone took them.", "Give the phone a name of your own."));
        List<List<ControlPoint>> seen =
                photos.stream().map(photo -> corners(photo, first, scale)).toList();
        Lens lens = fit(seen, longSide(first), shortSide(first));
        if (lens.errors().focal() > POOR) {
            throw new UserFacingException(
                    String.format(
                            Locale.ROOT,
                            "These photos tell the focal length only to %.1f %%.",
                            196 * lens.errors().focal()),
                    "Photograph the sheet again, tilted by 20 to 30 degrees to each side, filling the picture.");
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

    /** A lens in pixels of the pictures that it was fitted to. */
    record Lens(double focalPx, double k1, double k2, CalibratedLens.Errors errors) {}

    /** @param seen points of a flat ground in each view, all in pixels of pictures of this size */
    static Lens fit(List<List<ControlPoint>> seen, int widthPx, int heightPx) {
        LensPrior prior = LensPrior.usual(Math.hypot(widthPx, heightPx)).withMountingTolerance();
        BundleAdjustment best = DoubleStream.of(-0.4, 0, 0.4, 0.8)
                .mapToObj(step -> new PinholeCamera(
                        prior.focalPx() * Math.exp(step), (widthPx - 1) / 2.0, (heightPx - 1) / 2.0, 0, 0))
                .map(camera -> new BundleAdjustment(
                                seen,
                                prior,
                                STRETCH_SIGMA,
                                ViewSolver.LEAST_PIXEL_SIGMA,
                                BundleAdjustment.starts(seen, camera))
                        .run())
                .min(Comparator.comparingDouble(BundleAdjustment::cost))
                .orElseThrow();
        for (int v = 0; v < seen.size(); v++) {
            if (best.pixelSigma(v) > GREATEST_NOISE_PX) {
                throw new UserFacingException(
                        "The sheet in photo " + (v + 1) + " does not fit in with the others.",
                        "Leave that photo out, or see that the sheet lies flat and all photos are of one lens, not"
                                + " zoomed.");
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
                        photo.name() + " was taken with another camera, lens or zoom than " + first.name() + ".",
                        "Take all photos with one lens, without zoom, and do not crop them.");
            }
        }
    }

    /** The sheet's corners, as if the picture lay on its longer side and were of the first one's size. */
    private static List<ControlPoint> corners(Photo photo, Photo first, PrintScale scale) {
        double size = (double) longSide(first) / longSide(photo);
        boolean lying = photo.widthPx() >= photo.heightPx();
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            List<ControlPoint> corners = new ArrayList<>();
            for (ControlPoint corner : ReferenceSheetFinder.find(picture, scale).corners()) {
                Point px = corner.pixel();
                // Turned by a quarter, which no lens minds that is round.
                Point turned = lying ? px : new Point(px.y(), photo.widthPx() - 1 - px.x());
                corners.add(new ControlPoint(
                        corner.onGround(),
                        turned.plus(new Point(0.5, 0.5)).times(size).minus(new Point(0.5, 0.5))));
            }
            return corners;
        } catch (UserFacingException trouble) {
            throw new UserFacingException(photo.name() + " cannot be used.", trouble.getMessage(), trouble);
        }
    }

    private static int longSide(Photo photo) {
        return Math.max(photo.widthPx(), photo.heightPx());
    }

    private static int shortSide(Photo photo) {
        return Math.min(photo.widthPx(), photo.heightPx());
    }
}
