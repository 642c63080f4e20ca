package weltwright.trace.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.GroundObservation;
import weltwright.image.DecodedPhoto;
import weltwright.image.ExposureStatistics;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.report.PhotoAdvice;

/**
 * Checks the quality of a photo and returns advice for a better one. Each check has the threshold from which its effect
 * on a trace exceeds the rest of the error.
 */
public final class PhotoQualityCheck {
    /**
     * Least distance of the camera. An error h of the mid-plane's height changes a length by h over the distance: here
     * half a millimetre changes 210 mm by 0.35 mm, twice the rest of the error on the sheet.
     */
    private static final double NEAR_MM = 300;

    /** Recommended distance, at which that error is a quarter of a millimetre. */
    private static final double FAR_ENOUGH_MM = 420;

    /**
     * Greatest obliquity. Thickness t displaces a silhouette by t/2 · tan a: here 3.5 mm for a handle of 19 mm, which
     * is known to a quarter.
     */
    private static final double SLANTED_DEGREES = 20;

    /** Greatest blur, as a standard deviation: sharp photos of phones have 0.6 to 1.2. Chosen by eye. */
    private static final double BLURRED_PX = 2.2;

    /** Width from 10 % to 90 % of a blurred edge, in standard deviations (quantiles of the normal distribution). */
    private static final double SMEAR = 2.563;

    /** Least grey level of white paper: a tenth of the light at full range, by the gamma of 2.2 of sRGB. */
    private static final double DARK_LEVEL = 95;

    /** Greatest overexposed part of a photo, for glints; chosen by eye. */
    private static final double BURNT_PART = 0.06;

    /** Greatest darkest level relative to the lightest: a knife's shadow at least is darker; chosen by eye. */
    private static final double HAZE = 0.5;

    /** Least contrast of black print, which has 0.8 in good light; haze or glare reduces it. Chosen by eye. */
    private static final double PRINT_CONTRAST = 0.4;

    /** Least contrast of the pale lines of mats and squared paper; chosen by eye. */
    private static final double LINE_CONTRAST = 0.05;

    /** Least visible part of the ground's control points; a knife on the sheet's frame hides a fifth. By eye. */
    private static final double LEAST_SEEN = 0.6;

    /** Least resolution, at which half a pixel is an eighth of a millimetre. */
    private static final double COARSE_PX_PER_MM = 4;

    /** Margin of the photo that the knife must not reach; chosen by eye. */
    public static final double MARGIN_PX = 12;

    private PhotoQualityCheck() {}

    /** Returns the advice for a photo with a known ground. */
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

    /** Returns the advice for a photo with a ruled ground of unknown pitch, as far as it does not depend on scale. */
    public static List<PhotoAdvice> ofUnknownSize(DecodedPhoto picture, TraceableGround ground, CameraView view) {
        List<PhotoAdvice> advice = new ArrayList<>(ofLight(picture));
        advice.addAll(ofSlant(view));
        advice.addAll(ofPrint(
                PrintQuality.of(picture, view, ground.located().observation().edges()), false, OptionalDouble.empty()));
        return advice;
    }

    /** Returns the advice on the light, which needs no ground. */
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
     * Returns the advice on sharpness and contrast of the ground's print.
     *
     * @param print whether the ground has black print besides lines
     * @param pxPerMm empty where it is unknown
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
     * Returns the advice on the knife's place in the photo.
     *
     * @param contour of the knife on the ground's plane, in mm
     */
    public static List<PhotoAdvice> ofKnife(DecodedPhoto picture, CameraView view, Polyline contour) {
        boolean inside = contour.map(p -> view.pixel(Plane.GROUND.pointAbove(p))).points().stream()
                .allMatch(px -> isInside(picture, px, MARGIN_PX));
        return inside ? List.of() : List.of(new PhotoAdvice.KnifeReachesOver());
    }

    /** Returns whether a pixel lies in a photo, at least a margin from its border. */
    public static boolean isInside(DecodedPhoto picture, Point px, double marginPx) {
        return Math.min(px.x(), px.y()) >= marginPx
                && px.x() <= picture.widthPx() - 1 - marginPx
                && px.y() <= picture.heightPx() - 1 - marginPx;
    }
}
