package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.parallel.JoinedResult;
import weltwright.image.parallel.ParallelPair;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.PhotoQualityCheck;
import weltwright.trace.capture.SolvedView;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.ThicknessParallax;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.quality.BladeCheck;
import weltwright.trace.quality.BladeReflectionDetector;
import weltwright.trace.quality.DamagedImageArea;
import weltwright.trace.quality.ErrorEstimator;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;
import weltwright.trace.visibility.PrintVisibility;

/**
 * Traces a knife in a photo: from the photo of a knife on a ground of known size to its outline in the mid-plane. The
 * steps:
 *
 * <ol>
 *   <li>find the ground;
 *   <li>solve camera and pose ({@link LensEvidence});
 *   <li>find the area that the knife hides ({@link TraceableGround});
 *   <li>locate its edge on the photo's own pixels ({@link KnifeEdgeFollower});
 *   <li>build the silhouette ({@link SilhouetteBuilder});
 *   <li>check it, and estimate its error ({@link ErrorEstimator}).
 * </ol>
 */
public final class Tracer {
    private static final Messages TEXTS = Messages.of(Tracer.class);

    /** Least resolution: coarser photos lose the ground's lines and the knife's corners. Chosen by eye. */
    private static final double LEAST_PX_PER_MM = 2.2;

    /** Distance from the outline within which print is not compared with it; chosen by eye. */
    private static final double NEAR_OUTLINE_MM = 2;

    /** Distance outside of the outline beyond which other objects may hide print; chosen by eye. */
    private static final double OUTSIDE_MM = 8;

    /** Greatest part of contradicting observations of print, by noise; chosen by eye. */
    private static final double CONTRADICTED = 0.06;

    /** Distance from the handle's front beyond its shadow, from which mirrored lines are searched; chosen by eye. */
    private static final double PAST_FRONT_MM = 1.5;

    /** Distance of the points of the blade's outline in that search; chosen by eye. */
    private static final double BLADE_STEP_MM = 0.5;

    /** Radius of the disc that a mark stands for; chosen by eye. */
    private static final double MARK_RADIUS_MM = 1;

    /** Points of a disc of radius 1. */
    private static final List<Point> MARKED =
            List.of(new Point(0, 0), new Point(1, 0), new Point(0, 1), new Point(-1, 0), new Point(0, -1));

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** Thickness just behind a cutting edge, as a part of the spine's. Common practice. */
    private static final double EDGE_PART = 0.12;

    /** Least error of a focal length at 95 %, in percent: no lens fits its model better. Chosen by eye. */
    private static final double LEAST_FOCAL_PERCENT = 0.1;

    /** Half the width of the 95 % interval of a normal distribution, in standard deviations, in percent. */
    private static final double PERCENT_WITHIN_95 = 196;

    private Tracer() {}

    /**
     * Traces the knife.
     *
     * @throws UserFacingException where the photo cannot be traced
     */
    public static Trace trace(Photo photo, TraceSettings settings, ProgressListener progress) {
        return trace(photo, settings, Optional.empty(), progress);
    }

    /**
     * Traces the knife.
     *
     * @param located what an assessment of the same photo with the same ground and lens has found; empty where it is to
     *     be found
     * @throws UserFacingException where the photo cannot be traced
     */
    public static Trace trace(
            Photo photo, TraceSettings settings, Optional<LocatedKnife> located, ProgressListener progress) {
        progress.at(TEXTS.text("tracer.reading-the-picture"), 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            DamagedImageArea damaged = DamagedImageArea.of(photo);
            progress.at(TEXTS.text("tracer.looking-for-what-the-knife"), 0.2);
            LensEvidence lens = LensEvidence.of(photo, settings);
            TraceableGround ground = located.map(LocatedKnife::ground)
                    .orElseGet(() -> settings.ground()
                            .find(picture, settings.sheetScale(), lens.prior())
                            .known());
            SolvedView solved = located.map(LocatedKnife::solved).orElseGet(() -> lens.over(ground, picture));
            CameraView view = solved.view();
            checkFine(view);
            progress.at(TEXTS.text("tracer.looking-for-the-knife"), 0.4);
            TraceableGround.HiddenArea hidden = located.filter(
                            found -> settings.marks().isEmpty())
                    .map(LocatedKnife::hidden)
                    .orElseGet(() -> located.map(LocatedKnife::search)
                            .orElseGet(() -> search(picture, ground, view))
                            .find(KnifeEdgeFollower.fine(picture, view), told(settings, view)));
            // Needs the ground alone, and runs while the edge is followed, which keeps one processor busy.
            CompletableFuture<List<PhotoAdvice>> advice = located.map(
                            found -> CompletableFuture.completedFuture(found.advice()))
                    .orElseGet(
                            () -> CompletableFuture.supplyAsync(() -> PhotoQualityCheck.of(picture, ground, solved)));
            try {
                return trace(picture, settings, ground, hidden, solved, damaged, advice, progress);
            } finally {
                // The photo's memory must not be released before it ends.
                advice.handle((given, failure) -> given).join();
            }
        }
    }

    /** Returns a search for the area that the knife hides, on the pixels on which its edge is followed. */
    static TraceableGround.HiddenAreaSearch search(DecodedPhoto picture, TraceableGround ground, CameraView view) {
        return ground.search(KnifeEdgeFollower.fine(picture, view), KnifeEdgeFollower.fine(view));
    }

    private static Trace trace(
            DecodedPhoto picture,
            TraceSettings settings,
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SolvedView solved,
            DamagedImageArea damaged,
            CompletableFuture<List<PhotoAdvice>> advice,
            ProgressListener progress) {
        CameraView fineView = KnifeEdgeFollower.fine(solved.view());
        DecodedPhoto fine = KnifeEdgeFollower.fine(picture, solved.view());
        progress.at(TEXTS.text("tracer.following-its-edge"), 0.6);
        List<EdgePoint> edge = new KnifeEdgeFollower(fine, fineView, hidden).around();
        checkInside(fine, edge);
        Polyline edgeOnGround = KnifeEdgeFollower.onGround(edge, fineView);
        SilhouetteBuilder.Built built;
        Assessment assessment;
        try {
            // Who has marked what is knife has seen whether something touches it.
            boolean knifeIsMarked = settings.marks().stream().anyMatch(KnifeMark::isKnife);
            if (!knifeIsMarked) {
                BladeCheck.checkSolidityAndOverhang(edgeOnGround);
            }
            checkAgainstPrint(edgeOnGround, hidden.visibility().observations());
            progress.at(TEXTS.text("tracer.building-the-outline"), 0.8);
            built = new SilhouetteBuilder(fine, fineView, edge, thickness(settings), hidden.ends()::lineVisibilityAt)
                    .build(settings.tipDropMm());
            damaged.check(solved.view(), built);
            if (!knifeIsMarked) {
                BladeCheck.checkProtrusions(built.silhouette());
            }
            // A reflection also causes the errors that the first task reports; ParallelPair prefers the second's
            // exception.
            assessment = ParallelPair.of(
                            () -> assess(ground, hidden, solved, built, damaged),
                            () -> checkReflection(picture, solved.view(), ground, hidden, built))
                    .first();
        } catch (UserFacingException e) {
            throw new RejectedOutlineException(
                    e,
                    edgeOnGround
                            .map(p -> solved.view().pixel(Plane.GROUND.pointAbove(p)))
                            .points());
        }
        List<TraceNote> notes = new ArrayList<>(notes(picture, ground, solved));
        damaged.advice().map(TraceNote.Advised::new).ifPresent(notes::add);
        JoinedResult.of(advice).stream().map(TraceNote.Advised::new).forEach(notes::add);
        progress.at(TEXTS.text("tracer.traced"), 1);
        return new Trace(
                built.silhouette(),
                solved.view(),
                built.midPlane(),
                built.onGround(),
                assessment.error(),
                landmarkError(built, assessment.error(), settings),
                assessment.unsure(),
                notes);
    }

    private record Assessment(List<UncertainStretch> unsure, ErrorBudget error) {}

    private static Assessment assess(
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SolvedView solved,
            SilhouetteBuilder.Built built,
            DamagedImageArea damaged) {
        List<UncertainStretch> unsure = UncertainStretch.of(built.ring(), built.certainty());
        BladeCheck.check(built.silhouette(), unsure);
        if (hidden.isBlank() && built.frontMissing()) {
            throw BladeCheck.oneColoured();
        }
        ErrorBudget error = ErrorEstimator.estimate(solved.solution(), ground, hidden, built, unsure, damaged);
        BladeCheck.checkUse(error);
        return new Assessment(unsure, error);
    }

    /** Returns the silhouette if its blade does not mirror the ground. */
    private static Silhouette checkReflection(
            DecodedPhoto picture,
            CameraView view,
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SilhouetteBuilder.Built built) {
        double fromX = built.silhouette().landmarks().heel().x() + PAST_FRONT_MM;
        Polyline blade = Polyline.closed(built.silhouette().outline().sampled(BLADE_STEP_MM).points().stream()
                .filter(p -> p.x() > fromX)
                .map(p ->
                        view.pixel(built.midPlane().pointAbove(built.onGround().apply(p))))
                .map(px -> view.intersection(px, Plane.GROUND))
                .toList());
        double[] lineColour = hidden.visibility().lineColour();
        if (BladeReflectionDetector.detects(
                picture, view, blade, ground.located().groundLines().lines(), lineColour)) {
            throw BladeCheck.mirrorsTheGround();
        }
        return built.silhouette();
    }

    /** Returns the landmarks' error. Which side of a double-edged blade is called the edge makes no difference. */
    private static LandmarkUncertainty landmarkError(
            SilhouetteBuilder.Built built, ErrorBudget error, TraceSettings settings) {
        LandmarkUncertainty uncertainty = LandmarkUncertainty.of(built, error);
        return settings.doubleEdged() ? uncertainty.withEdgeConfirmed() : uncertainty;
    }

    /** Returns the knife's thicknesses by the settings. */
    static ThicknessParallax thickness(TraceSettings settings) {
        return new ThicknessParallax(
                settings.measuredSpineMm(),
                EDGE_PART * settings.measuredSpineMm(),
                settings.measuredHandleMm(),
                settings.thickness(),
                settings.handleSection(),
                settings.doubleEdged());
    }

    /** Returns the points of the ground at which the settings' marks are seen, each with others around it. */
    static List<PrintVisibility.Observation> told(TraceSettings settings, CameraView view) {
        return settings.marks().stream()
                .flatMap(mark -> {
                    Point at = view.intersection(mark.pixel(), Plane.GROUND);
                    return MARKED.stream()
                            .map(off -> new PrintVisibility.Observation(
                                    at.plus(off.times(MARK_RADIUS_MM)), !mark.isKnife()));
                })
                .toList();
    }

    private static void checkFine(CameraView view) {
        if (view.pxPerMm() < LEAST_PX_PER_MM) {
            throw new UserFacingException(
                    TEXTS.text(
                            "tracer.the-picture-is-too-coarse",
                            TEXTS.text("tracer.mm-of-the-ground", 1 / view.pxPerMm())),
                    TEXTS.text("tracer.use-the-picture-at-its"));
        }
    }

    private static void checkInside(DecodedPhoto picture, List<EdgePoint> edge) {
        if (!edge.stream()
                .allMatch(point -> PhotoQualityCheck.isInside(picture, point.pixel(), PhotoQualityCheck.MARGIN_PX))) {
            throw new UserFacingException(
                    TEXTS.text("tracer.the-knife-runs-out-of"), TEXTS.text("tracer.photograph-it-again-from-farther"));
        }
    }

    /**
     * Checks that the ground's print is hidden inside the outline and visible outside. The mask was made from that, but
     * later steps may have departed from it.
     *
     * @throws UserFacingException where too many observations contradict the outline
     */
    private static void checkAgainstPrint(Polyline onGround, List<PrintVisibility.Observation> observations) {
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(onGround.polygon());
        IndexedFacetDistance outline = new IndexedFacetDistance(onGround.lineString());
        int inside = 0;
        int wrong = 0;
        for (PrintVisibility.Observation observation : observations) {
            Coordinate at = observation.at().coordinate();
            boolean isInside = area.locate(at) == Location.INTERIOR;
            inside += isInside ? 1 : 0;
            if (observation.visible() == isInside) {
                double distance = outline.distance(GEOMETRY.createPoint(at));
                wrong += distance > NEAR_OUTLINE_MM && (isInside || distance < OUTSIDE_MM) ? 1 : 0;
            }
        }
        if (wrong > CONTRADICTED * inside) {
            throw new UserFacingException(
                    TEXTS.text("tracer.something-else-than-the-knife"),
                    TEXTS.text("tracer.photograph-it-again-in-flat"));
        }
    }

    /** Returns notes on ground, focal length and camera. */
    static List<TraceNote> notes(DecodedPhoto picture, TraceableGround ground, SolvedView solved) {
        ViewSolver.Solution solution = solved.solution();
        List<TraceNote> notes = new ArrayList<>(ground.notes(solution));
        notes.add(new TraceNote.FocalLength(
                LensEvidence.focal35mm(solution.view().camera().focalPx(), picture.diagonalPx()),
                Math.max(LEAST_FOCAL_PERCENT, PERCENT_WITHIN_95 * solution.focalRelativeSigma()),
                solved.lensSource()));
        notes.add(new TraceNote.CameraPosition(
                solution.view().eye().norm(), solution.view().tiltDegrees()));
        return notes;
    }
}
