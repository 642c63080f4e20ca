package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.parallel.ParallelPair;
import weltwright.knife.Silhouette;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.PhotoQualityCheck;
import weltwright.trace.capture.SolvedView;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.EdgeJump;
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
 * Photo of a knife on a ground of known size to its outline in the mid-plane. The steps: find the ground, solve for
 * camera and pose, find what hides the ground, follow its edge on the picture's own pixels, and build the silhouette.
 */
public final class Tracer {
    /** Coarser pictures hide the ground's lines and the knife's corners. */
    private static final double LEAST_PX_PER_MM = 2.2;

    /** What the print says counts where it is farther than this from the outline. */
    private static final double NEAR_RIM_MM = 2;

    /** Outside of the outline it counts up to here: farther out, other things may lie on the ground and hide it. */
    private static final double OUTSIDE_MM = 8;

    /** A picture's noise makes so many of the looks at the print err, and no more. */
    private static final double CONTRADICTED = 0.06;

    /** The shadow right before a handle's front is a line, too: a blade is looked at for mirrored ones from here on. */
    private static final double PAST_FRONT_MM = 1.5;

    /** Between points of the blade's outline, to look within it. */
    private static final double BLADE_STEP_MM = 0.5;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** Thickness just behind a cutting edge, as a part of the spine's. Common practice. */
    private static final double EDGE_PART = 0.12;

    /** No photo pins a focal length better than this, whatever its noise: lenses are not that much like their model. */
    private static final double LEAST_FOCAL_PERCENT = 0.1;

    private Tracer() {}

    /** Throws {@link UserFacingException} where the photo cannot be traced. */
    public static Trace trace(Photo photo, TraceSettings settings, ProgressListener progress) {
        progress.at("Reading the picture", 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            DamagedImageArea damaged = DamagedImageArea.of(photo);
            progress.at("Looking for what the knife lies on", 0.2);
            LensEvidence lens = LensEvidence.of(photo, settings);
            TraceableGround ground = settings.ground()
                    .find(picture, settings.sheetScale(), lens.prior())
                    .known();
            SolvedView solved = lens.over(ground, picture);
            CameraView view = solved.view();
            checkFine(view);
            progress.at("Looking for the knife", 0.4);
            TraceableGround.HiddenArea hidden =
                    ground.hiddenArea(KnifeEdgeFollower.fine(picture, view), KnifeEdgeFollower.fine(view));
            // Looks at the ground alone, so there is time for it while the edge is followed, which keeps one processor
            // busy.
            CompletableFuture<List<PhotoAdvice>> advice =
                    CompletableFuture.supplyAsync(() -> PhotoQualityCheck.of(picture, ground, solved));
            try {
                return traced(picture, settings, ground, hidden, solved, damaged, advice, progress);
            } finally {
                // The picture's memory must not go away under it.
                advice.handle((given, failure) -> given).join();
            }
        }
    }

    private static Trace traced(
            DecodedPhoto picture,
            TraceSettings settings,
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SolvedView solved,
            DamagedImageArea damaged,
            CompletableFuture<List<PhotoAdvice>> advice,
            ProgressListener progress) {
        SilhouetteBuilder.Built built = built(
                KnifeEdgeFollower.fine(picture, solved.view()),
                KnifeEdgeFollower.fine(solved.view()),
                settings,
                hidden,
                progress);
        damaged.check(solved.view(), built);
        // A mirror's trouble is told rather than those that it brings about, so what throws it comes second.
        Judged judged = ParallelPair.of(
                        () -> judged(ground, hidden, solved, built, damaged),
                        () -> notMirroring(picture, solved.view(), ground, hidden, built))
                .first();
        List<TraceNote> notes = new ArrayList<>(notes(picture, ground, solved));
        damaged.advice().map(TraceNote.Advised::new).ifPresent(notes::add);
        advice.join().stream().map(TraceNote.Advised::new).forEach(notes::add);
        progress.at("Traced", 1);
        return new Trace(
                built.silhouette(),
                solved.view(),
                built.midPlane(),
                built.onGround(),
                judged.error(),
                LandmarkUncertainty.of(built, judged.error()),
                judged.unsure(),
                notes);
    }

    private record Judged(List<UncertainStretch> unsure, ErrorBudget error) {}

    private static Judged judged(
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
        ErrorBudget error = ErrorEstimator.of(solved.solution(), ground, hidden, built, unsure, damaged);
        BladeCheck.checkUse(error);
        // What a leap leads to may be as clear as the edge, and yet wants a look.
        return new Judged(UncertainStretch.of(built.ring(), EdgeJump.doubted(built.certainty(), built.leaps())), error);
    }

    /** The silhouette, if its blade does not mirror the ground. */
    private static Silhouette notMirroring(
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
        if (BladeReflectionDetector.isIn(
                picture, view, blade, ground.located().groundLines().lines(), lineColour)) {
            throw BladeCheck.mirrorsTheGround();
        }
        return built.silhouette();
    }

    private static SilhouetteBuilder.Built built(
            DecodedPhoto picture,
            CameraView view,
            TraceSettings settings,
            TraceableGround.HiddenArea hidden,
            ProgressListener progress) {
        progress.at("Following its edge", 0.6);
        List<EdgePoint> edge = new KnifeEdgeFollower(picture, view, hidden).round();
        checkInside(picture, edge);
        checkAgainstPrint(view, edge, hidden.visibility().observations());
        progress.at("Building the outline", 0.8);
        return new SilhouetteBuilder(picture, view, edge, thickness(settings)).build(settings.tipDropMm());
    }

    static ThicknessParallax thickness(TraceSettings settings) {
        return new ThicknessParallax(
                settings.spineThicknessMm(),
                EDGE_PART * settings.spineThicknessMm(),
                settings.handleThicknessMm(),
                settings.thickness());
    }

    private static void checkFine(CameraView view) {
        if (view.pxPerMm() < LEAST_PX_PER_MM) {
            throw new UserFacingException(
                    "The picture is too coarse to measure in: one of its pixels covers "
                            + String.format(Locale.ROOT, "%.1f mm of the ground.", 1 / view.pxPerMm()),
                    "Use the picture at its full size, with the ground filling most of it.");
        }
    }

    private static void checkInside(DecodedPhoto picture, List<EdgePoint> edge) {
        for (EdgePoint point : edge) {
            double x = point.pixel().x();
            double y = point.pixel().y();
            if (Math.min(x, y) < PhotoQualityCheck.RIM_PX
                    || x > picture.widthPx() - 1 - PhotoQualityCheck.RIM_PX
                    || y > picture.heightPx() - 1 - PhotoQualityCheck.RIM_PX) {
                throw new UserFacingException(
                        "The knife runs out of the picture.",
                        "Photograph it again from farther away, with the whole knife and the ground round it in view.");
            }
        }
    }

    /**
     * The ground's print must be hidden inside the outline and seen outside it. The mask began from that, but may have
     * gone astray since; an outline that contradicts it is none.
     */
    private static void checkAgainstPrint(
            CameraView view, List<EdgePoint> edge, List<PrintVisibility.Observation> observations) {
        Polyline onGround = Polyline.closed(edge.stream()
                .map(point -> view.intersection(point.pixel(), Plane.GROUND))
                .toList());
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(onGround.polygon());
        IndexedFacetDistance rim = new IndexedFacetDistance(onGround.lineString());
        int inside = 0;
        int wrong = 0;
        for (PrintVisibility.Observation observation : observations) {
            Coordinate at = observation.at().coordinate();
            boolean isInside = area.locate(at) == Location.INTERIOR;
            inside += isInside ? 1 : 0;
            if (observation.visible() == isInside) {
                double fromRim = rim.distance(GEOMETRY.createPoint(at));
                wrong += fromRim > NEAR_RIM_MM && (isInside || fromRim < OUTSIDE_MM) ? 1 : 0;
            }
        }
        if (wrong > CONTRADICTED * inside) {
            throw new UserFacingException(
                    "Something else than the knife's edge was followed in this picture.",
                    "Photograph it again in flat, even light, with nothing but the knife on the ground.");
        }
    }

    /** What was used and how sure it is. */
    static List<TraceNote> notes(DecodedPhoto picture, TraceableGround ground, SolvedView solved) {
        ViewSolver.Solution solution = solved.solution();
        List<TraceNote> notes = new ArrayList<>(ground.notes(solution));
        notes.add(new TraceNote.FocalLength(
                LensEvidence.focal35mm(solution.view().camera().focalPx(), picture.diagonalPx()),
                Math.max(LEAST_FOCAL_PERCENT, 196 * solution.focalRelativeSigma()),
                solved.lensSource()));
        notes.add(new TraceNote.CameraPosition(
                solution.view().eye().norm(), solution.view().tiltDegrees()));
        return notes;
    }
}
