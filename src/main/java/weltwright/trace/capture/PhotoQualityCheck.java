package weltwright.trace.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Polyline;
import weltwright.ground.GroundObservation;
import weltwright.image.DecodedPhoto;
import weltwright.image.ExposureStatistics;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.report.PhotoAdvice;

/**
 * What of a photo can be told to the person who could take a better one. Each check has a threshold at which the error
 * of a trace begins to grow by more than the rest of it.
 */
public final class PhotoQualityCheck {
    /**
     * The knife floats half its handle's thickness up, so what is not known of that makes it larger or smaller by as
     * much as the distance divides it: from here half a millimetre is worth 0.35 mm on a knife of 210 mm, twice what
     * the rest of a trace on the sheet is off by.
     */
    private static final double NEAR_MM = 300;

    /** From there the same is worth a quarter of a millimetre. */
    private static final double FAR_ENOUGH_MM = 420;

    /**
     * What thickness adds to a silhouette seen at angle a is t/2 · tan a on either side; by this angle that is 3.5 mm
     * for a handle of 19 mm, and it is known to a quarter.
     */
    private static final double SLANTED_DEGREES = 20;

    /** A phone's sharp picture has 0.6 to 1.2; from here on corners are rounded and pale lines lost. */
    private static final double BLURRED_PX = 2.2;

    /** A bell curve rises from a tenth to nine tenths over so many standard deviations. */
    private static final double SMEAR = 2.563;

    /** White paper below this has a tenth of the light that the camera can take; what is left is grain. */
    private static final double DARK_LEVEL = 95;

    /** So much of the picture may glint; more of it is paper burnt out, and thin lines with it. */
    private static final double BURNT_PART = 0.06;

    /** Wherever a knife lies there is something dark, if only its shadow: half as bright as the lightest is haze. */
    private static final double HAZE = 0.5;

    /** Black print in fair light is a fifth as bright as paper, and haze or shine lifts it. */
    private static final double PRINT_CONTRAST = 0.4;

    /** Lines of mats and squared paper are pale at best; below this they drown in grain. */
    private static final double LINE_CONTRAST = 0.05;

    /** A knife on the sheet's frame hides a fifth of it. */
    private static final double LEAST_SEEN = 0.6;

    /** Half a pixel is then an eighth of a millimetre. */
    private static final double COARSE_PX_PER_MM = 4;

    /** Nearer than this to the picture's rim the knife may go on outside it. */
    public static final double RIM_PX = 12;

    private PhotoQualityCheck() {}

    /** All that can be told of a photo whose ground is known. */
    public static List<PhotoAdvice> of(DecodedPhoto picture, TraceableGround ground, SolvedView solved) {
        CameraView view = solved.view();
        GroundObservation observation = ground.located().observation();
        List<PhotoAdvice> advice = new ArrayList<>(ofLight(picture));
        advice.addAll(ofSize(view, observation));
        advice.addAll(ofSlant(view));
        advice.addAll(ofPrint(
                PrintQuality.of(picture, view, observation.edges()),
                ground.hasBlackPrint(),
                OptionalDouble.of(view.pxPerMm())));
        solved.contradiction().ifPresent(advice::add);
        return advice;
    }

    /** The same of a ruled ground of which nobody said how far apart its lines are: what does not hang on that. */
    public static List<PhotoAdvice> ofUnknownSize(DecodedPhoto picture, TraceableGround ground, CameraView view) {
        List<PhotoAdvice> advice = new ArrayList<>(ofLight(picture));
        advice.addAll(ofSlant(view));
        advice.addAll(ofPrint(
                PrintQuality.of(picture, view, ground.located().observation().edges()), false, OptionalDouble.empty()));
        return advice;
    }

    /** Of its light alone: what can be told where no ground is found. */
    public static List<PhotoAdvice> ofLight(DecodedPhoto picture) {
        ExposureStatistics light = ExposureStatistics.of(picture);
        List<PhotoAdvice> advice = new ArrayList<>();
        if (light.whiteLevel() < DARK_LEVEL) {
            advice.add(new PhotoAdvice.TooDark(light.whiteLevel()));
        }
        if (light.clippedPart() > BURNT_PART) {
            advice.add(new PhotoAdvice.Overexposed(light.clippedPart()));
        }
        if (light.blackLevel() > HAZE * light.whiteLevel()) {
            advice.add(new PhotoAdvice.Hazy(light.blackLevel(), light.whiteLevel()));
        }
        return advice;
    }

    private static List<PhotoAdvice> ofSize(CameraView view, GroundObservation observation) {
        List<PhotoAdvice> advice = new ArrayList<>();
        double distance = view.eye().z();
        if (distance < NEAR_MM) {
            advice.add(new PhotoAdvice.TooNear(distance, FAR_ENOUGH_MM));
        }
        double pxPerMm = view.pxPerMm();
        if (pxPerMm < COARSE_PX_PER_MM) {
            advice.add(new PhotoAdvice.TooCoarse(pxPerMm));
        }
        if (observation.foundPart() < LEAST_SEEN) {
            advice.add(new PhotoAdvice.GroundHidden(observation.found(), observation.expected()));
        }
        return advice;
    }

    private static List<PhotoAdvice> ofSlant(CameraView view) {
        double degrees = view.obliquityDegrees();
        return degrees <= SLANTED_DEGREES ? List.of() : List.of(new PhotoAdvice.TooSlanted(degrees));
    }

    /**
     * Of its sharpness, and how the ground's print shows.
     *
     * @param print whether the ground has black print, and not lines alone
     * @param pxPerMm empty where it is not known
     */
    private static List<PhotoAdvice> ofPrint(PrintQuality quality, boolean print, OptionalDouble pxPerMm) {
        List<PhotoAdvice> advice = new ArrayList<>();
        double smearPx = SMEAR * quality.blurPx().orElse(0);
        if (smearPx > SMEAR * BLURRED_PX) {
            advice.add(
                    pxPerMm.isPresent()
                            ? new PhotoAdvice.Blurred(smearPx, smearPx / pxPerMm.getAsDouble())
                            : new PhotoAdvice.BlurredAtUnknownScale(smearPx));
        }
        if (quality.contrast().isPresent()
                && quality.contrast().getAsDouble() < (print ? PRINT_CONTRAST : LINE_CONTRAST)) {
            advice.add(new PhotoAdvice.FaintPrint(quality.contrast().getAsDouble()));
        }
        return advice;
    }

    /**
     * Tells what of the knife would make a better photo.
     *
     * @param contour of what lies on the ground, on the ground's plane
     */
    public static List<PhotoAdvice> ofKnife(DecodedPhoto picture, CameraView view, Polyline contour) {
        boolean inside = contour.map(p -> view.pixel(Plane.GROUND.pointAbove(p))).points().stream()
                .allMatch(px -> Math.min(px.x(), px.y()) > RIM_PX
                        && px.x() < picture.widthPx() - 1 - RIM_PX
                        && px.y() < picture.heightPx() - 1 - RIM_PX);
        return inside ? List.of() : List.of(new PhotoAdvice.KnifeReachesOver());
    }
}
