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
import weltwright.trace.KnifeEdgeFollower;
import weltwright.trace.ProgressListener;
import weltwright.trace.Tracer;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;

/**
 * Photo of a knife that stands on its spine or its edge to its thickness along its length: what is seen of it from
 * above.
 *
 * <p>Made for a knife whose outline is known from a photo of it lying, which stands on the same kinds of ground, is
 * held by one or two blocks lower than it, and is photographed from straight above. The steps:
 *
 * <ol>
 *   <li>find ground and camera, and what hides the ground, as {@link Tracer} does;
 *   <li>find the line that the knife stands on, and the blade, which is too narrow to hide much print
 *       ({@link StandingKnifeContour});
 *   <li>follow the edge of both, and measure both sides from the line, millimetre by millimetre
 *       ({@link StandingKnifeAxis});
 *   <li>leave out what is too wide to be the knife, and what a block may touch;
 *   <li>take off what a handle's roundness adds where it is looked at aslant; leave out a blade whose lower half may
 *       stick out beyond its thickest part there;
 *   <li>keep the few readings between which the rest is straight.
 * </ol>
 *
 * <p>The height of a station matters little: 5 mm of it at 350 mm from the camera change a thickness of 4 mm by 0.06
 * mm.
 */
public final class ThicknessTracer {
    /** Both sides of one station must be about as far from the middle: what is farther off belongs to a block. */
    private static final double UNEVEN_MM = 0.8;

    /** More than this over what the caliper said is no handle. */
    private static final double TOO_THICK_MM = 1.5;

    /** A block hides the knife's side a little beyond its own end, and throws its shadow there. */
    private static final double BESIDE_BLOCK_MM = 3;

    /** At its ends and at the step from handle to blade a knife's sides are not seen by themselves. */
    private static final double NEAR_END_MM = 2.5;

    /** Readings are taken until the rest lies this near to the lines between them: less than the photo tells. */
    private static final double STRAIGHT_MM = 0.15;

    /** A butt is rounded over, and no sheath holds so much of it. Common practice. */
    private static final double BUTT_MM = 10;

    /** Readings nearer together tell more of the block beside the knife than of the knife. Chosen by eye. */
    private static final double APART_MM = 5;

    /** Fewer stations than these tell no thickness. */
    private static final int LEAST_STATIONS = 20;

    private final StandingPose pose;
    private final Knife knife;

    private ThicknessTracer(StandingPose pose, Knife knife) {
        this.pose = pose;
        this.knife = knife;
    }

    /**
     * The knife's thickness along its length.
     *
     * @param settings of the photo: its ground, lens and sheet; what they say of the knife is of no account
     * @param knife as outlined from a photo of it lying
     * @throws UserFacingException where the photo does not show it
     */
    public static ThicknessProfile trace(
            Photo photo, TraceSettings settings, Knife knife, StandingPose.Foot foot, ProgressListener progress) {
        progress.at("Reading the picture", 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            progress.at("Looking for what the knife stands on", 0.2);
            LensEvidence lens = LensEvidence.of(photo, settings);
            TraceableGround ground = settings.ground()
                    .find(picture, settings.sheetScale(), lens.prior())
                    .known();
            CameraView view = lens.over(ground, picture).view();
            progress.at("Following its sides", 0.5);
            DecodedPhoto fine = KnifeEdgeFollower.fine(picture, view);
            CameraView fineView = KnifeEdgeFollower.fine(view);
            StandingPose pose = new StandingPose(knife, foot);
            StandingKnifeContour contour = StandingKnifeContour.of(
                    fine, fineView, pose, knife.spineThicknessMm(), ground.hiddenArea(fine, fineView));
            List<Point> pixels = new KnifeEdgeFollower(fine, fineView, contour.hiddenArea())
                    .round().stream().map(EdgePoint::pixel).toList();
            ThicknessProfile profile = new ThicknessTracer(pose, knife).profile(pixels, contour.line());
            progress.at("Traced", 1);
            return profile;
        }
    }

    private ThicknessProfile profile(List<Point> pixels, StandingKnifeAxis rough) {
        StandingKnifeAxis line = rough.centred(pixels);
        List<StandingKnifeAxis.Station> stations = clear(line.stations(pixels));
        if (stations.size() < LEAST_STATIONS) {
            throw new UserFacingException(
                    "Too little of the knife's two sides is to be seen in this photo.",
                    "Hold it with one or two small blocks at the handle, and photograph it from straight above.");
        }
        return new ThicknessProfile(readings(stations));
    }

    /** Without what a block hides or may touch, the knife's ends, and the step from handle to blade. */
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

    /** Whether a blade's thin side does not stick out beyond its thick one, as seen from where the camera is. */
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

    /** The station farthest from the lines between those kept; less than 0 where all are near enough. */
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

    /** The median of a station and its neighbours of the same part. */
    private static Reading smoothed(List<Reading> all, int i, double blade) {
        Reading here = all.get(i);
        double[] near = all.stream()
                .filter(r -> Math.abs(r.fromTipMm() - here.fromTipMm()) < 2.5 * StandingKnifeAxis.STEP_MM)
                .filter(r -> r.fromTipMm() > blade == here.fromTipMm() > blade)
                .mapToDouble(Reading::thicknessMm)
                .toArray();
        return new Reading(here.fromTipMm(), OrderStatistic.median(near));
    }

    /** To what a maker would write down; no photo tells more. */
    private static Reading rounded(Reading reading) {
        return new Reading(Math.round(reading.fromTipMm()), Math.round(reading.thicknessMm() * 10) / 10.0);
    }

    /**
     * Half the thickness of what is seen so wide. A handle's section |u/c|ⁿ + |v/w|ⁿ = 1 is seen at a lean a as far out
     * as (cᵖ + (w·a)ᵖ)^(1/p), where 1/n + 1/p = 1 (the norm dual to that of the section).
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
