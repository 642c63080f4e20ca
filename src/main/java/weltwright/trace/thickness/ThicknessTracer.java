package weltwright.trace.thickness;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.camera.CameraView;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.knife.CrossSection;
import weltwright.knife.Knife;
import weltwright.knife.StandingPose;
import weltwright.knife.ThicknessProfile;
import weltwright.knife.ThicknessProfile.Reading;
import weltwright.message.Messages;
import weltwright.trace.KnifeEdgeFollower;
import weltwright.trace.ProgressListener;
import weltwright.trace.Tracer;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;

/**
 * Measures the thickness of a knife along its length in a photo from above of the knife standing on its spine or edge.
 *
 * <p>Made for a knife whose outline is known from a photo of it lying, and which is held upright by one or two blocks
 * lower than it. The steps:
 *
 * <ol>
 *   <li>find ground, camera and the hidden area as {@link Tracer} does;
 *   <li>find the line over which the knife stands, and the blade, which is too narrow to hide much print
 *       ({@link StandingKnifeContour});
 *   <li>locate the edge of both, and measure both sides from the line at each millimetre ({@link StandingKnifeAxis});
 *   <li>discard stations that are too wide, or that a block may touch;
 *   <li>subtract what the roundness of a handle adds in an oblique view; discard a blade whose lower half may stand out
 *       beyond its thickest part;
 *   <li>reduce the stations to a few readings with straight lines between them.
 * </ol>
 *
 * <p>The height of a station matters little: 5 mm at 350 mm from the camera change a thickness of 4 mm by 0.06 mm.
 */
public final class ThicknessTracer {
    private static final Messages TEXTS = Messages.of(ThicknessTracer.class);

    /** Greatest difference of the two sides' distances from the line; more is due to a block. Chosen by eye. */
    private static final double UNEVEN_MM = 0.8;

    /** Greatest thickness above that by caliper; more is due to a block. Chosen by eye. */
    private static final double TOO_THICK_MM = 1.5;

    /** Distance from a block within which it may hide or shade the knife's side; chosen by eye. */
    private static final double BESIDE_BLOCK_MM = 3;

    /** Distance from the tip and the heel within which a side is not seen by itself; chosen by eye. */
    private static final double NEAR_END_MM = 2.5;

    /** Greatest distance of a station from the lines between readings: less than the photo's error; by eye. */
    private static final double STRAIGHT_MM = 0.15;

    /** Length of a butt that is rounded over and that no sheath holds. Common practice. */
    private static final double BUTT_MM = 10;

    /** Least distance of readings; nearer ones are rather due to a block. Chosen by eye. */
    private static final double APART_MM = 5;

    /** Half the window of the running median, in stations; chosen by eye. */
    private static final double SMOOTHED_STATIONS = 2.5;

    /** Least number of stations of a profile; chosen by eye. */
    private static final int LEAST_STATIONS = 20;

    private final StandingPose pose;
    private final Knife knife;

    private ThicknessTracer(StandingPose pose, Knife knife) {
        this.pose = pose;
        this.knife = knife;
    }

    /**
     * Measures the thickness.
     *
     * @param settings of the photo: its ground, lens and sheet; what they hold of the knife is ignored
     * @param knife as traced in a photo of it lying
     * @throws UserFacingException where the photo does not show it
     */
    public static ThicknessProfile trace(
            Photo photo, TraceSettings settings, Knife knife, StandingPose.Foot foot, ProgressListener progress) {
        progress.at(TEXTS.text("thickness-tracer.reading-the-picture"), 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            progress.at(TEXTS.text("thickness-tracer.looking-for-what-the-knife"), 0.2);
            LensEvidence lens = LensEvidence.of(photo, settings);
            TraceableGround ground = settings.ground()
                    .find(picture, settings.sheetScale(), lens.prior())
                    .known();
            CameraView view = lens.over(ground, picture).view();
            progress.at(TEXTS.text("thickness-tracer.following-its-sides"), 0.5);
            DecodedPhoto fine = KnifeEdgeFollower.fine(picture, view);
            CameraView fineView = KnifeEdgeFollower.fine(view);
            StandingPose pose = new StandingPose(knife, foot);
            StandingKnifeContour contour = StandingKnifeContour.of(
                    fine, fineView, pose, knife.spineThicknessMm(), ground.hiddenArea(fine, fineView));
            List<Point> pixels = new KnifeEdgeFollower(fine, fineView, contour.hiddenArea())
                    .around().stream().map(EdgePoint::pixel).toList();
            ThicknessProfile profile = new ThicknessTracer(pose, knife).profile(pixels, contour.line());
            progress.at(TEXTS.text("thickness-tracer.traced"), 1);
            return profile;
        }
    }

    private ThicknessProfile profile(List<Point> pixels, StandingKnifeAxis rough) {
        StandingKnifeAxis line = rough.centred(pixels);
        List<StandingKnifeAxis.Station> stations = clear(line.stations(pixels));
        if (stations.size() < LEAST_STATIONS) {
            throw new UserFacingException(
                    TEXTS.text("thickness-tracer.too-little-of-the-knife"),
                    TEXTS.text("thickness-tracer.hold-it-with-one-or"));
        }
        return new ThicknessProfile(readings(stations));
    }

    /** Returns the stations that no block may touch, away from the ends and from the step from handle to blade. */
    private List<StandingKnifeAxis.Station> clear(List<StandingKnifeAxis.Station> stations) {
        double most = (knife.handleThicknessMm() + TOO_THICK_MM) / 2;
        List<Double> blocked = stations.stream()
                .filter(s -> s.halfMm() > most || Math.abs(s.leftMm() + s.rightMm()) > UNEVEN_MM)
                .map(s -> s.place().alongMm())
                .toList();
        return stations.stream()
                .filter(s ->
                        blocked.stream().noneMatch(at -> Math.abs(at - s.place().alongMm()) < BESIDE_BLOCK_MM))
                .filter(s -> !isNearEnd(s.place().alongMm()))
                .filter(s -> s.place().part() == CrossSection.Part.HANDLE || showsItsThickestPart(s))
                .toList();
    }

    private boolean isNearEnd(double alongMm) {
        return Math.min(Math.abs(alongMm), pose.tip().alongMm() - alongMm) < NEAR_END_MM
                || alongMm - pose.butt().alongMm() < BUTT_MM;
    }

    /** Returns whether the thickest part of a blade hides its lower half from the camera. */
    private static boolean showsItsThickestPart(StandingKnifeAxis.Station station) {
        return Math.abs(station.lean()) * 2 * station.place().halfWidthMm() < station.halfMm();
    }

    private List<Reading> readings(List<StandingKnifeAxis.Station> stations) {
        List<Reading> all = stations.stream()
                .map(s -> new Reading(s.place().fromTipMm(), 2 * trueHalfMm(s)))
                .sorted(Comparator.comparingDouble(Reading::fromTipMm))
                .toList();
        List<Integer> kept = new ArrayList<>();
        double blade = knife.bladeLengthMm();
        addEnds(
                kept,
                all,
                IntStream.range(0, all.size())
                        .filter(i -> all.get(i).fromTipMm() <= blade)
                        .toArray());
        addEnds(
                kept,
                all,
                IntStream.range(0, all.size())
                        .filter(i -> all.get(i).fromTipMm() > blade)
                        .toArray());
        while (kept.size() < ThicknessProfile.MOST) {
            int farthest = farthest(all, kept, blade);
            if (farthest < 0) {
                break;
            }
            kept.add(farthest);
            kept.sort(null);
        }
        return kept.stream().map(i -> rounded(smoothed(all, i, blade))).toList();
    }

    private static void addEnds(List<Integer> kept, List<Reading> all, int[] part) {
        if (part.length > 0) {
            kept.add(part[0]);
        }
        if (part.length > 1
                && all.get(part[part.length - 1]).fromTipMm() - all.get(part[0]).fromTipMm()
                        > StandingKnifeAxis.STEP_MM) {
            kept.add(part[part.length - 1]);
        }
    }

    /** Returns the station farthest from the lines between those kept; −1 where all are near enough. */
    private static int farthest(List<Reading> all, List<Integer> kept, double blade) {
        int farthest = -1;
        double most = STRAIGHT_MM;
        for (int k = 0; k + 1 < kept.size(); k++) {
            Reading a = smoothed(all, kept.get(k), blade);
            Reading b = smoothed(all, kept.get(k + 1), blade);
            boolean acrossHeel = a.fromTipMm() <= blade && b.fromTipMm() > blade;
            for (int i = kept.get(k) + 1; i < kept.get(k + 1) && !acrossHeel; i++) {
                Reading p = smoothed(all, i, blade);
                double share = (p.fromTipMm() - a.fromTipMm()) / (b.fromTipMm() - a.fromTipMm());
                double off = Math.abs(p.thicknessMm() - a.thicknessMm() - share * (b.thicknessMm() - a.thicknessMm()));
                boolean apart = p.fromTipMm() - a.fromTipMm() > APART_MM && b.fromTipMm() - p.fromTipMm() > APART_MM;
                if (apart && off > most) {
                    most = off;
                    farthest = i;
                }
            }
        }
        return farthest;
    }

    /** Returns the median of a station and its neighbours in the same part of the knife. */
    private static Reading smoothed(List<Reading> all, int i, double blade) {
        Reading here = all.get(i);
        double[] near = all.stream()
                .filter(r -> Math.abs(r.fromTipMm() - here.fromTipMm()) < SMOOTHED_STATIONS * StandingKnifeAxis.STEP_MM)
                .filter(r -> r.fromTipMm() > blade == here.fromTipMm() > blade)
                .mapToDouble(Reading::thicknessMm)
                .toArray();
        return new Reading(here.fromTipMm(), OrderStatistic.median(near));
    }

    /** Rounds to whole millimetres along the knife and tenths of thickness, the accuracy of a photo. */
    private static Reading rounded(Reading reading) {
        return new Reading(Math.round(reading.fromTipMm()), Math.round(reading.thicknessMm() * 10) / 10.0);
    }

    /**
     * Returns half the thickness at a station. A handle's section |u/c|ⁿ + |v/w|ⁿ = 1 reaches out to (cᵖ +
     * (w·a)ᵖ)^(1/p) at a lean a, where 1/n + 1/p = 1 (the norm dual to that of the section).
     */
    private double trueHalfMm(StandingKnifeAxis.Station station) {
        if (station.place().part() == CrossSection.Part.BLADE) {
            return station.halfMm();
        }
        double n = knife.shaping().handleExponent();
        double p = n / (n - 1);
        double seen = Math.pow(station.halfMm(), p);
        double added = Math.pow(station.place().halfWidthMm() * Math.abs(station.lean()), p);
        return Math.pow(Math.max(0, seen - added), 1 / p);
    }
}
