package weltwright.knife;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;

/**
 * A knife's outline in its mid-plane, as it lies and is seen from above: never mirrored. The heel, as it was proposed,
 * is on x = 0, x runs to the tip along the knife's long axis, y to the left of that, in mm. A heel that the user moves
 * leaves the frame where it is.
 *
 * @param outline counter-clockwise
 * @param landmarks in the same frame
 * @param spineOnLeft whether the spine is on the side of positive y; a knife that lies on its other face has it right
 */
public record Silhouette(Outline outline, Landmarks landmarks, boolean spineOnLeft) {
    /** A corner that was drawn anew is the same corner within this. */
    private static final double SAME_CORNER_MM = 3;

    /** The knife with the spine up, whichever face it lay on; its thicknesses by caliper, in mm. */
    public Knife knife(
            double spineThicknessMm, double handleThicknessMm, CrossSectionShape shaping, ThicknessProfile thickness) {
        return new Knife(
                spineOnLeft ? outline : turnedOver(),
                spineOnLeft ? landmarks : landmarks.map(Silhouette::acrossAxis),
                spineThicknessMm,
                handleThicknessMm,
                shaping,
                thickness);
    }

    /**
     * The same knife with another outline: each landmark goes to the place of it that is nearest; where it was on a
     * corner, to a corner near by if there is one.
     */
    public Silhouette withOutline(Outline changed) {
        Polyline curve = changed.sampled(0.1);
        return new Silhouette(changed, landmarks.map(p -> nearest(p, changed, curve)), spineOnLeft);
    }

    /** The knife with edge and spine exchanged: what was taken for the one is the other. */
    public Silhouette withOtherSide() {
        return new Silhouette(
                outline, landmarks.withHeel(landmarks.spineStart()).withSpineStart(landmarks.heel()), !spineOnLeft);
    }

    /** With a guard, or without one. */
    public Silhouette withGuard(Optional<Guard> guard) {
        return new Silhouette(outline, landmarks.withGuard(guard), spineOnLeft);
    }

    /**
     * With the guard between two places along the knife; throws {@link UserFacingException} where they are not between
     * its ends.
     *
     * @param frontFromTipMm how far the guard's front is from the tip, along the knife
     * @param backFromTipMm the same of its back
     */
    public Silhouette withGuardFromTip(double frontFromTipMm, double backFromTipMm) {
        Polyline curve = outline.sampled(0.1);
        OutlineSides sides = new OutlineSides(curve);
        double front = landmarks.tip().x() - Math.min(frontFromTipMm, backFromTipMm);
        double back = landmarks.tip().x() - Math.max(frontFromTipMm, backFromTipMm);
        if (front >= landmarks.tip().x() || back <= landmarks.butt().x()) {
            throw new UserFacingException(
                    "The guard would not lie on the knife.",
                    "Measure from the tip, along the knife, to the guard's front and to its back.");
        }
        Guard told = new Guard(outermost(sides, front), outermost(sides, back));
        return withGuard(Optional.of(told.map(p -> curve.at(curve.stationOf(p)))));
    }

    /** The guard as the outline's shape has it. */
    public Silhouette withGuardFound() {
        return withGuard(GuardFinder.find(outline.sampled(0.1), landmarks.heel().x()));
    }

    /** Of the two points of the outline at a place along the knife the one that is farther from the axis. */
    private static Point outermost(OutlineSides sides, double x) {
        return new Point(x, sides.upper(x) > -sides.lower(x) ? sides.upper(x) : sides.lower(x));
    }

    private Point nearest(Point landmark, Outline changed, Polyline curve) {
        boolean wasCorner = outline.nodes().stream().anyMatch(n -> n.sharp() && n.at().equals(landmark));
        return changed.nodes().stream()
                .filter(n -> n.at().equals(landmark) || (wasCorner && n.sharp()))
                .map(OutlineNode::at)
                .filter(p -> p.distance(landmark) < SAME_CORNER_MM)
                .min(Comparator.comparingDouble(p -> p.distance(landmark)))
                .orElseGet(() -> curve.at(curve.stationOf(landmark)));
    }

    /** Mirroring turns the sense of the outline, so its nodes are taken backwards. */
    private Outline turnedOver() {
        List<OutlineNode> nodes = new ArrayList<>();
        for (OutlineNode node : outline.nodes()) {
            nodes.add(0, new OutlineNode(acrossAxis(node.at()), node.sharp()));
        }
        return new Outline(nodes);
    }

    private static Point acrossAxis(Point p) {
        return new Point(p.x(), -p.y());
    }

    /** From heel to tip along the knife, in mm. */
    public double bladeLengthMm() {
        return landmarks.tip().x() - landmarks.heel().x();
    }

    /** From the butt to the tip along the knife, in mm. */
    public double overallLengthMm() {
        var xs = outline.sampled(0.25).points().stream().mapToDouble(Point::x).summaryStatistics();
        return xs.getMax() - xs.getMin();
    }
}
