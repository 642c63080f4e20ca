package weltwright.trace.quality;

import java.util.List;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Landmarks;
import weltwright.knife.OutlineSides;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;

/**
 * Checks that an outline includes a blade. A polished blade mirrors the ground, and a bright one is lost in overexposed
 * paper; the rest of the knife then has a clear outline, and only its shape and its colours show the mistake.
 */
public final class BladeCheck {
    private static final Messages TEXTS = Messages.of(BladeCheck.class);

    /** Distance from the tip at which the width of the blade is measured; chosen by eye. */
    private static final double BEHIND_TIP_MM = 3;

    /** Greatest width there, as a part of the handle's, of a blade with a tip; a sheepsfoot's is less. By eye. */
    private static final double BLUNT = 0.5;

    /** Least width of a cleaver's blade, which ends square, as a multiple of its handle's. Common practice. */
    private static final double CLEAVER = 1.3;

    /** Greatest weak part of a blade's outline; chosen by eye. */
    private static final double WEAK_BLADE = 0.8;

    /** Greatest weak part of an outline; correct ones of knives with known shape have up to 0.3; chosen by eye. */
    private static final double WEAK_OUTLINE = 0.35;

    /** Greatest useful error of an outline at 95 %: more than twice the ease of a sheath. Common practice. */
    private static final double OF_NO_USE_MM = 2;

    /** Least part of its convex hull that a knife fills; the wide guard of a dagger leaves two thirds. By eye. */
    private static final double LEAST_SOLIDITY = 0.5;

    /** How far something sticks out at most that is part of a knife; chosen by eye. */
    private static final double FARTHEST_PROTRUSION_MM = 5;

    /** How far a side turns back at most, at a bent guard or a beaked butt: known knives do by up to 1.2; by eye. */
    private static final double LONGEST_OVERHANG_MM = 10;

    /** Distance of the points of the outline that are compared; chosen by eye. */
    private static final double STEP_MM = 0.25;

    /** Tolerance for a point to lie on a stretch, less than {@link #STEP_MM}. */
    private static final double ON_STRETCH_MM = 0.1;

    private static final GeometryFactory JTS = new GeometryFactory();

    private BladeCheck() {}

    /**
     * Checks that an outline is as full as a knife's, and that no side of it turns back far. One that was followed
     * round a pencil is not, whether that touches the knife across or runs beside it.
     *
     * @param outline closed, on the ground
     * @throws UserFacingException where it is not
     */
    public static void checkSolidityAndOverhang(Polyline outline) {
        Polygon polygon = outline.polygon();
        if (polygon.getArea() < LEAST_SOLIDITY * polygon.convexHull().getArea()
                || OutlineProtrusion.overhangMm(outline) > LONGEST_OVERHANG_MM) {
            throw touched();
        }
    }

    /**
     * Checks that nothing sticks out of an outline like a coin that touches the knife.
     *
     * @throws UserFacingException where something does
     */
    public static void checkProtrusions(Silhouette silhouette) {
        if (OutlineProtrusion.greatestMm(silhouette.outline().sampled(STEP_MM)) > FARTHEST_PROTRUSION_MM) {
            throw touched();
        }
    }

    private static UserFacingException touched() {
        return new UserFacingException(
                TEXTS.text("blade-check.something-touches-the-knife"), TEXTS.text("blade-check.move-it-away"));
    }

    /**
     * Checks the shape of an outline and how much of it is weak.
     *
     * @throws UserFacingException where it is not that of a whole knife
     */
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
        double weakMm = unsure.stream()
                .mapToDouble(stretch -> stretch.along(outline).lengthMm())
                .sum();
        if (weakPartOfBlade(outline, landmarks, unsure) > WEAK_BLADE || weakMm > WEAK_OUTLINE * outline.lengthMm()) {
            throw hardlySeen();
        }
        if (lastSeenApart(outline, landmarks.tip(), unsure) > BLUNT * handle) {
            throw noTip();
        }
    }

    private static UserFacingException noTip() {
        return new UserFacingException(
                TEXTS.text("blade-check.the-blade-s-tip-is"), TEXTS.text("blade-check.turn-the-lamp-or-the"));
    }

    /**
     * Returns the width of the blade where a weak stretch around its tip begins, 0 where there is none. The outline
     * beyond is a guess, whose own tip is not the blade's.
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
     * Checks that the edge was located accurately enough for a sheath.
     *
     * @throws UserFacingException where it was not
     */
    public static void checkUse(ErrorBudget error) {
        if (ErrorEstimator.ofEdge(error) > OF_NO_USE_MM) {
            throw hardlySeen();
        }
    }

    /** Returns the error for a blade that mirrors the ground's lines ({@link BladeReflectionDetector}). */
    public static UserFacingException mirrorsTheGround() {
        return new UserFacingException(
                TEXTS.text("blade-check.the-blade-mirrors-what-it"),
                TEXTS.text("blade-check.turn-the-knife-or-photograph"));
    }

    private static UserFacingException hardlySeen() {
        return new UserFacingException(
                TEXTS.text("blade-check.the-knife-hardly-stands-out"), TEXTS.text("blade-check.lay-it-on-a-ground"));
    }

    /**
     * Returns the error for a knife on a ground without print whose handle has no visible end: its blade may be lost in
     * grain, or all of it may be steel.
     */
    public static UserFacingException oneColoured() {
        return new UserFacingException(
                TEXTS.text("blade-check.handle-and-blade-are-not"),
                TEXTS.text("blade-check.photograph-it-again-in-more"));
    }

    private static double widest(OutlineSides sides, double fromX, double toX) {
        double widest = 0;
        for (double x = fromX; x < toX; x += STEP_MM) {
            widest = Math.max(widest, sides.width(x));
        }
        return widest;
    }

    /** Returns the part of the blade's outline along which the edge is weak. */
    private static double weakPartOfBlade(Polyline outline, Landmarks landmarks, List<UncertainStretch> unsure) {
        List<Point> blade = outline.points().stream()
                .filter(p -> p.x() > landmarks.heel().x())
                .toList();
        List<IndexedFacetDistance> stretches = unsure.stream()
                .map(stretch -> new IndexedFacetDistance(stretch.along(outline).lineString()))
                .toList();
        long weak = blade.stream()
                .map(p -> JTS.createPoint(p.coordinate()))
                .filter(p -> stretches.stream().anyMatch(s -> s.distance(p) < ON_STRETCH_MM))
                .count();
        return weak / (double) blade.size();
    }
}
