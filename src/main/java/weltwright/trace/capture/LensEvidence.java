package weltwright.trace.capture;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import weltwright.camera.ControlPoint;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.CalibratedLens;
import weltwright.camera.lens.LensPrior;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;

/**
 * The prior knowledge of a photo's lens and its source.
 *
 * @param prior values with their uncertainty
 * @param source of the prior
 * @param cutOut whether the photo is known to be a part of a larger one
 */
public record LensEvidence(LensPrior prior, LensSource source, boolean cutOut) {
    private static final LensSource FROM_GROUND = new LensSource.GroundAlone();

    /**
     * Difference of the prior and the measured focal length, in standard deviations of both together, at which they
     * contradict each other: chance exceeds it once in 16 000 photos.
     */
    private static final double CONTRADICTED = 4;

    /**
     * Residual of the control points, as a part of the diagonal, from which a cropped photo is considered: five times
     * that of a flat ground, a tenth of a pixel in a photo of 12 MP with a diagonal of 5000 pixels.
     */
    private static final double MISFIT = 1e-4;

    /**
     * Least part of the control points that fit a lens: a fit to half of them may leave the others out. Of photos that
     * were not cropped, 93 of 100 fit and more. Chosen by eye.
     */
    private static final double LEAST_INLIERS = 0.8;

    /** Residual with a free principal point relative to a fixed one, below which a photo is cropped; by eye. */
    private static final double MUCH_BETTER = 0.5;

    /** Number of control points from which the measured focal length is solved; chosen by eye, for speed. */
    private static final int SAMPLE = 120;

    /** Relative standard deviation of Exif's focal length: whole millimetres, without focusing. Common practice. */
    private static final double EXIF_FOCAL_SIGMA = 0.03;

    /** Relative standard deviation of an entered focal length; chosen by eye. */
    private static final double TYPED_FOCAL_SIGMA = 0.02;

    /** Returns the prior by the settings, else by the photo's metadata, else that of any lens. */
    public static LensEvidence of(Photo photo, TraceSettings settings) {
        double pxPer35mm = Math.hypot(photo.widthPx(), photo.heightPx()) / CalibratedLens.DIAGONAL_35MM;
        if (settings.focal35mm().isPresent()) {
            double focal = settings.focal35mm().getAsDouble();
            return new LensEvidence(
                    LensPrior.ofFocal(focal * pxPer35mm, TYPED_FOCAL_SIGMA),
                    new LensSource.Typed(focal),
                    photo.isCutOut());
        }
        if (settings.phone().isPresent()) {
            CalibratedLens phone = settings.phone().get();
            return new LensEvidence(
                    phone.prior(photo),
                    new LensSource.Phone(phone.name(), phone.views(), phone.focal35mm()),
                    photo.isCutOut());
        }
        if (photo.focal35mm().isPresent()) {
            double focal = photo.focal35mm().getAsDouble();
            return new LensEvidence(
                    LensPrior.ofFocal(focal * pxPer35mm, EXIF_FOCAL_SIGMA),
                    new LensSource.PictureData(focal),
                    photo.isCutOut());
        }
        return new LensEvidence(
                LensPrior.usual(Math.hypot(photo.widthPx(), photo.heightPx())), FROM_GROUND, photo.isCutOut());
    }

    /** Converts a focal length in pixels to 35 mm terms. */
    public static double focal35mm(double focalPx, double diagonalPx) {
        return focalPx * CalibratedLens.DIAGONAL_35MM / diagonalPx;
    }

    /**
     * Solves camera and pose over a ground. The prior is used unless the ground contradicts it: it would then distort
     * the pose, so it is left out, with an advice. Where the control points fit no lens with its principal point in the
     * middle, but one with a free principal point, the photo was cropped.
     */
    public SolvedView over(TraceableGround ground, DecodedPhoto picture) {
        LensPrior any = LensPrior.usual(picture.diagonalPx());
        if (cutOut) {
            return new SolvedView(
                    ground.located().solve(picture, prior.forCroppedPicture()),
                    source,
                    Optional.of(new PhotoAdvice.CutOut()));
        }
        ViewSolver.Solution seen = ground.located().solve(picture, prior);
        if (!fits(seen, ground, picture)) {
            // A wrong prior may be the cause, so the fit is compared with that of any lens.
            ViewSolver.Solution whole = isTold() ? ground.located().solve(picture, any) : seen;
            ViewSolver.Solution cut = ground.located().solve(picture, any.forCroppedPicture());
            if (cut.pixelSigma() < MUCH_BETTER * whole.pixelSigma()
                    || (fits(cut, ground, picture) && !fits(whole, ground, picture))) {
                return new SolvedView(cut, FROM_GROUND, Optional.of(new PhotoAdvice.CutOut()));
            }
        }
        if (!isTold() || !contradicts(ground, picture)) {
            return new SolvedView(seen, source, Optional.empty());
        }
        ViewSolver.Solution alone = ground.located().solve(picture, any);
        return new SolvedView(
                alone,
                FROM_GROUND,
                Optional.of(new PhotoAdvice.LensContradicted(
                        source, focal35mm(alone.view().camera().focalPx(), picture.diagonalPx()))));
    }

    private static boolean fits(ViewSolver.Solution solution, TraceableGround ground, DecodedPhoto picture) {
        double mostPx = Math.max(MISFIT * picture.diagonalPx(), ground.located().pixelSigma());
        return solution.pixelSigma() <= mostPx
                && solution.inliers()
                        >= LEAST_INLIERS * ground.located().references().size();
    }

    private boolean isTold() {
        return !(source instanceof LensSource.GroundAlone);
    }

    private boolean contradicts(TraceableGround ground, DecodedPhoto picture) {
        List<ControlPoint> all = ground.located().references();
        int step = Math.max(1, all.size() / SAMPLE);
        List<ControlPoint> sample = IntStream.range(0, all.size() / step)
                .mapToObj(k -> all.get(k * step))
                .toList();
        ViewSolver.Solution alone = ViewSolver.solve(
                sample,
                picture.widthPx(),
                picture.heightPx(),
                LensPrior.usual(picture.diagonalPx()).withMountingTolerance(),
                ground.located().stretchSigma(),
                ground.located().pixelSigma());
        double apart = Math.abs(Math.log(alone.view().camera().focalPx() / prior.focalPx()));
        return apart > CONTRADICTED * Math.hypot(alone.focalRelativeSigma(), prior.focalRelativeSigma());
    }
}
