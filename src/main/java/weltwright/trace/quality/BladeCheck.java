package weltwright.trace.quality;

import java.util.List;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Landmarks;
import weltwright.knife.OutlineSides;
import weltwright.knife.Silhouette;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;

/**
 * Whether an outline has a blade. A polished one shows the ground, and a bright one is lost in burnt-out paper; what is
 * left of the knife then has an outline as clear as any, and only its shape and its colours tell.
 */
public final class BladeCheck {
    /** A blade is judged so far behind its tip: there even a sheepsfoot's is less than half as wide as its handle. */
    private static final double BEHIND_TIP_MM = 3;

    /** What is wider than this there, as a part of the handle's greatest width, has no tip. */
    private static final double BLUNT = 0.5;

    /** A cleaver's blade, which ends square, is wider than its handle by more than this. Common practice. */
    private static final double CLEAVER = 1.3;

    /** A blade of whose outline more than this is a guess was not seen. */
    private static final double GUESSED = 0.8;

    /**
     * Of an outline that more than this is a guess of, the rest does not hold it. Faint but true outlines, of knives
     * with known shape, have up to three tenths.
     */
    private static final double UNSEEN = 0.35;

    /**
     * An outline known to no better than this is of no use: more than twice the ease that a sheath is given. Common
     * practice.
     */
    private static final double OF_NO_USE_MM = 2;

    private static final double STEP_MM = 0.25;

    /** A stretch ends where the edge shows again, give or take this. */
    private static final double ON_STRETCH_MM = 0.1;

    private static final GeometryFactory JTS = new GeometryFactory();

    private BladeCheck() {}

    /** Throws {@link UserFacingException} where what was followed is no whole knife. */
    public static void check(Silhouette silhouette, List<UncertainStretch> unsure) {
        Polyline outline = silhouette.outline().sampled(STEP_MM);
        Landmarks landmarks = silhouette.landmarks();
        OutlineSides sides = new OutlineSides(outline);
        double handle = widest(sides, landmarks.butt().x(), landmarks.heel().x());
        double blade = widest(sides, landmarks.heel().x(), landmarks.tip().x());
        boolean isBlunt = sides.width(landmarks.tip().x() - BEHIND_TIP_MM) > BLUNT * handle;
        if (isBlunt && blade < CLEAVER * handle) {
            throw noTip();
        }
        double unseen = unsure.stream()
                .mapToDouble(stretch -> stretch.along(outline).lengthMm())
                .sum();
        if (guessed(outline, landmarks, unsure) > GUESSED || unseen > UNSEEN * outline.lengthMm()) {
            throw hardlySeen();
        }
        if (lastSeenApart(outline, landmarks.tip(), unsure) > BLUNT * handle) {
            throw noTip();
        }
    }

    private static UserFacingException noTip() {
        return new UserFacingException(
                "The blade's tip is not to be seen: what stands out from the ground ends bluntly.",
                "Turn the lamp or the camera until all of the blade stands out from the ground, or dull a mirror"
                        + " finish with chalk, and photograph it again.");
    }

    /**
     * How far apart the sides of the blade are where they are last seen before its tip. What lies beyond is a guess;
     * where that runs aslant, it has a tip of its own, which tells nothing of the blade's.
     */
    private static double lastSeenApart(Polyline outline, Point tip, List<UncertainStretch> unsure) {
        return unsure.stream()
                .filter(stretch -> {
                    Polyline guess = stretch.along(outline);
                    return guess.at(guess.stationOf(tip)).distance(tip) < ON_STRETCH_MM;
                })
                .mapToDouble(
                        stretch -> Math.abs(stretch.from().y() - stretch.to().y()))
                .max()
                .orElse(0);
    }

    /**
     * Throws {@link UserFacingException} where the edge was seen so badly that no sheath can be made by the outline.
     */
    public static void checkUse(ErrorBudget error) {
        if (ErrorEstimator.ofEdge(error) > OF_NO_USE_MM) {
            throw hardlySeen();
        }
    }

    /** What to say of a blade that shows the ground's own lines ({@link BladeReflectionDetector}). */
    public static UserFacingException mirrorsTheGround() {
        return new UserFacingException(
                "The blade mirrors what it lies on, so its edge is not to be told from the ground.",
                "Turn the knife or photograph from another angle until the blade mirrors something plain, or dull the finish"
                        + " with chalk, and photograph it again.");
    }

    private static UserFacingException hardlySeen() {
        return new UserFacingException(
                "The knife hardly stands out from what it lies on.",
                "Lay it on a ground of another colour, or turn the lamp until its edges show, and photograph it again.");
    }

    /**
     * What to say where no print tells what is hidden and no handle is seen to end: what is left of a knife whose blade
     * is lost in grain cannot there be told from one that is all steel.
     */
    public static UserFacingException oneColoured() {
        return new UserFacingException(
                "Handle and blade are not told apart; one of them may be missing from what stands out.",
                "Photograph it again in more light, or on the printed sheet.");
    }

    private static double widest(OutlineSides sides, double fromX, double toX) {
        double widest = 0;
        for (double x = fromX; x < toX; x += STEP_MM) {
            widest = Math.max(widest, sides.width(x));
        }
        return widest;
    }

    /** The share of the blade's outline at which no edge was seen. */
    private static double guessed(Polyline outline, Landmarks landmarks, List<UncertainStretch> unsure) {
        List<Point> blade = outline.points().stream()
                .filter(p -> p.x() > landmarks.heel().x())
                .toList();
        List<IndexedFacetDistance> stretches = unsure.stream()
                .map(stretch -> new IndexedFacetDistance(stretch.along(outline).lineString()))
                .toList();
        long guessed = blade.stream()
                .map(p -> JTS.createPoint(p.coordinate()))
                .filter(p -> stretches.stream().anyMatch(s -> s.distance(p) < ON_STRETCH_MM))
                .count();
        return guessed / (double) blade.size();
    }
}
