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
import weltwright.geometry.Polyline;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;
import weltwright.knife.Silhouette;
import weltwright.photo.Photo;
import weltwright.trouble.Trouble;

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

    /** Throws {@link Trouble} where the photo cannot be traced. */
    public static Trace trace(Photo photo, TraceSettings settings, Progress progress) {
        progress.at("Reading the picture", 0);
        try (Picture picture = Picture.decode(photo)) {
            DamagedPart damaged = DamagedPart.of(photo);
            progress.at("Looking for what the knife lies on", 0.2);
            LensTold lens = LensTold.of(photo, settings);
            KnownGround ground = settings.ground()
                    .find(picture, settings.sheetScale(), lens.prior())
                    .known();
            SolvedView solved = lens.over(ground, picture);
            View view = solved.view();
            checkFine(view);
            progress.at("Looking for the knife", 0.4);
            KnownGround.Cover cover = ground.cover(EdgeFollower.fine(picture, view), EdgeFollower.fine(view));
            // Looks at the ground alone, so there is time for it while the edge is followed, which keeps one processor
            // busy.
            CompletableFuture<List<PhotoAdvice>> advice =
                    CompletableFuture.supplyAsync(() -> PhotoCheck.of(picture, ground, solved));
            try {
                return traced(picture, settings, ground, cover, solved, damaged, advice, progress);
            } finally {
                // The picture's memory must not go away under it.
                advice.handle((given, failure) -> given).join();
            }
        }
    }

    private static Trace traced(
            Picture picture,
            TraceSettings settings,
            KnownGround ground,
            KnownGround.Cover cover,
            SolvedView solved,
            DamagedPart damaged,
            CompletableFuture<List<PhotoAdvice>> advice,
            Progress progress) {
        SilhouetteBuilder.Built built = built(
                EdgeFollower.fine(picture, solved.view()), EdgeFollower.fine(solved.view()), settings, cover, progress);
        damaged.check(solved.view(), built);
        // A mirror's trouble is told rather than those that it brings about, so what throws it comes second.
        Judged judged = Both.of(
                        () -> judged(ground, cover, solved, built, damaged),
                        () -> notMirroring(picture, solved.view(), ground, cover, built))
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
                LandmarkError.of(built, judged.error()),
                judged.unsure(),
                notes);
    }

    private record Judged(List<Unsure> unsure, ErrorBudget error) {}

    private static Judged judged(
            KnownGround ground,
            KnownGround.Cover cover,
            SolvedView solved,
            SilhouetteBuilder.Built built,
            DamagedPart damaged) {
        List<Unsure> unsure = Unsure.of(built.ring(), built.certainty());
        BladeCheck.check(built.silhouette(), unsure);
        if (cover.isBlank() && built.frontMissing()) {
            throw BladeCheck.oneColoured();
        }
        ErrorBudget error = ErrorEstimate.of(solved.solution(), ground, cover, built, unsure, damaged);
        BladeCheck.checkUse(error);
        // What a leap leads to may be as clear as the edge, and yet wants a look.
        return new Judged(Unsure.of(built.ring(), Leap.doubted(built.certainty(), built.leaps())), error);
    }

    /** The silhouette, if its blade does not mirror the ground. */
    private static Silhouette notMirroring(
            Picture picture, View view, KnownGround ground, KnownGround.Cover cover, SilhouetteBuilder.Built built) {
        double fromX = built.silhouette().landmarks().heel().x() + PAST_FRONT_MM;
        Polyline blade = Polyline.closed(built.silhouette().outline().sampled(BLADE_STEP_MM).points().stream()
                .filter(p -> p.x() > fromX)
                .map(p -> view.pixel(built.midPlane().over(built.onGround().apply(p))))
                .map(px -> view.meets(px, Plane.GROUND))
                .toList());
        double[] lineColour = cover.look().lineColour();
        if (MirroredGround.isIn(picture, view, blade, ground.located().sketch().lines(), lineColour)) {
            throw BladeCheck.mirrorsTheGround();
        }
        return built.silhouette();
    }

    private static SilhouetteBuilder.Built built(
            Picture picture, View view, TraceSettings settings, KnownGround.Cover cover, Progress progress) {
        progress.at("Following its edge", 0.6);
        List<EdgePoint> edge = new EdgeFollower(picture, view, cover).round();
        checkInside(picture, edge);
        checkAgainstPrint(view, edge, cover.look().sights());
        progress.at("Building the outline", 0.8);
        return new SilhouetteBuilder(picture, view, edge, thickness(settings)).build(settings.tipDropMm());
    }

    static ThickKnife thickness(TraceSettings settings) {
        return new ThickKnife(
                settings.spineThicknessMm(),
                EDGE_PART * settings.spineThicknessMm(),
                settings.handleThicknessMm(),
                settings.thickness());
    }

    private static void checkFine(View view) {
        if (view.pxPerMm() < LEAST_PX_PER_MM) {
            throw new Trouble(
                    "The picture is too coarse to measure in: one of its pixels covers "
                            + String.format(Locale.ROOT, "%.1f mm of the ground.", 1 / view.pxPerMm()),
                    "Use the picture at its full size, with the ground filling most of it.");
        }
    }

    private static void checkInside(Picture picture, List<EdgePoint> edge) {
        for (EdgePoint point : edge) {
            double x = point.pixel().x();
            double y = point.pixel().y();
            if (Math.min(x, y) < PhotoCheck.RIM_PX
                    || x > picture.widthPx() - 1 - PhotoCheck.RIM_PX
                    || y > picture.heightPx() - 1 - PhotoCheck.RIM_PX) {
                throw new Trouble(
                        "The knife runs out of the picture.",
                        "Photograph it again from farther away, with the whole knife and the ground round it in view.");
            }
        }
    }

    /**
     * The ground's print must be hidden inside the outline and seen outside it. The mask began from that, but may have
     * gone astray since; an outline that contradicts it is none.
     */
    private static void checkAgainstPrint(View view, List<EdgePoint> edge, List<PrintLook.Sight> sights) {
        Polyline onGround = Polyline.closed(edge.stream()
                .map(point -> view.meets(point.pixel(), Plane.GROUND))
                .toList());
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(onGround.polygon());
        IndexedFacetDistance rim = new IndexedFacetDistance(onGround.lineString());
        int inside = 0;
        int wrong = 0;
        for (PrintLook.Sight sight : sights) {
            Coordinate at = sight.at().coordinate();
            boolean isInside = area.locate(at) == Location.INTERIOR;
            inside += isInside ? 1 : 0;
            if (sight.visible() == isInside) {
                double fromRim = rim.distance(GEOMETRY.createPoint(at));
                wrong += fromRim > NEAR_RIM_MM && (isInside || fromRim < OUTSIDE_MM) ? 1 : 0;
            }
        }
        if (wrong > CONTRADICTED * inside) {
            throw new Trouble(
                    "Something else than the knife's edge was followed in this picture.",
                    "Photograph it again in flat, even light, with nothing but the knife on the ground.");
        }
    }

    /** What was used and how sure it is. */
    static List<TraceNote> notes(Picture picture, KnownGround ground, SolvedView solved) {
        ViewSolver.Solution solution = solved.solution();
        List<TraceNote> notes = new ArrayList<>(ground.notes(solution));
        notes.add(new TraceNote.FocalLength(
                LensTold.focal35mm(solution.view().camera().focalPx(), picture.diagonalPx()),
                Math.max(LEAST_FOCAL_PERCENT, 196 * solution.focalRelativeSigma()),
                solved.lensSource()));
        notes.add(new TraceNote.CameraPosition(
                solution.view().eye().norm(), solution.view().tiltDegrees()));
        return notes;
    }
}
