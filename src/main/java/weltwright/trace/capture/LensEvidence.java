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
 * What is known of a photo's lens before its ground is looked at, and who says so.
 *
 * @param prior likeliest values and their doubt
 * @param source who says so
 * @param cutOut whether the photo says that it is a part of a larger one
 */
public record LensEvidence(LensPrior prior, LensSource source, boolean cutOut) {
    private static final LensSource FROM_GROUND = new LensSource.GroundAlone();

    /**
     * Told and seen focal lengths that are farther apart than so many standard deviations of both together contradict
     * each other: chance does that once in 16 000 photos.
     */
    private static final double CONTRADICTED = 4;

    /**
     * Points of a ground that lies flat fit to a tenth of a pixel on a photo of 12 MP, whose diagonal is 5000; with
     * five times as much something is wrong.
     */
    private static final double MISFIT = 1e-4;

    /** A lens that looks elsewhere explains a picture that was cut out; a bent sheet it does not. */
    private static final double MUCH_BETTER = 0.5;

    /** Enough of a ground's points to see whether it contradicts what was told. */
    private static final int SAMPLE = 120;

    /** Exif gives whole millimetres and ignores that lenses move as they focus. Common practice. */
    private static final double EXIF_FOCAL_SIGMA = 0.03;

    private static final double TYPED_FOCAL_SIGMA = 0.02;

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

    /** A camera's focal length in 35 mm terms. */
    public static double focal35mm(double focalPx, double diagonalPx) {
        return focalPx * CalibratedLens.DIAGONAL_35MM / diagonalPx;
    }

    /**
     * Camera and pose over a ground. What was told of the lens goes in, unless the ground contradicts it: then it is
     * left out, for it would pull the pose away from the points, and that is said. Where the points fit no lens that
     * looks at the picture's middle, but one that looks elsewhere, the picture was cut out of a larger one.
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
        if (seen.pixelSigma()
                > Math.max(MISFIT * picture.diagonalPx(), ground.located().pixelSigma())) {
            // What was told may be at fault, so what any lens could do is the measure.
            double anyLens = !isTold()
                    ? seen.pixelSigma()
                    : ground.located().solve(picture, any).pixelSigma();
            ViewSolver.Solution cut = ground.located().solve(picture, any.forCroppedPicture());
            if (cut.pixelSigma() < MUCH_BETTER * anyLens) {
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
