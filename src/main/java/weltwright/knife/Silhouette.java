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
import weltwright.message.Messages;

/**
 * The outline of a knife in its mid-plane, seen from above as the knife lay in the photo, never mirrored. In its frame
 * the heel as first proposed is on x = 0, x runs to the tip along the knife's long axis, y to the left of that, in mm.
 * The frame stays where it is when the user moves the heel.
 *
 * @param outline counter-clockwise
 * @param landmarks in the same frame
 * @param spineOnLeft whether the spine is on the side of positive y, the left as seen towards the tip
 */
public record Silhouette(Outline outline, Landmarks landmarks, boolean spineOnLeft) {
    private static final Messages TEXTS = Messages.of(Silhouette.class);

    /** A corner of a changed outline is taken to be the old one within this distance. Chosen by eye. */
    private static final double SAME_CORNER_MM = 3;

    /** Returns the knife with the spine at positive y, mirrored where needed; thicknesses in mm. */
    public Knife knife(
            double spineThicknessMm, double handleThicknessMm, CrossSectionShape shaping, ThicknessProfile thickness) {
        return new Knife(
                spineOnLeft ? outline : mirroredOutline(),
                spineOnLeft ? landmarks : landmarks.map(Silhouette::mirrored),
                spineThicknessMm,
                handleThicknessMm,
                shaping,
                thickness);
    }

    /**
     * Returns the knife with another outline. Each landmark moves to the nearest point of it; one that was on a corner
     * moves to a corner near by, if there is one.
     */
    public Silhouette withOutline(Outline changed) {
        Polyline curve = changed.sampled(0.1);
        return new Silhouette(changed, landmarks.map(p -> nearest(p, changed, curve)), spineOnLeft);
    }

    /** Returns the knife with edge and spine exchanged. */
    public Silhouette withOtherSide() {
        return new Silhouette(
                outline, landmarks.withHeel(landmarks.spineStart()).withSpineStart(landmarks.heel()), !spineOnLeft);
    }

    /** Returns the knife with this guard, or without one. */
    public Silhouette withGuard(Optional<Guard> guard) {
        return new Silhouette(outline, landmarks.withGuard(guard), spineOnLeft);
    }

    /**
     * Returns the knife with the guard between two places along it. Throws {@link UserFacingException} where they are
     * not between the knife's ends.
     *
     * @param frontFromTipMm distance of the guard's front from the tip, along the knife
     * @param backFromTipMm distance of its back from the tip
     */
    public Silhouette withGuardFromTip(double frontFromTipMm, double backFromTipMm) {
        Polyline curve = outline.sampled(0.1);
        OutlineSides sides = new OutlineSides(curve);
        double front = landmarks.tip().x() - Math.min(frontFromTipMm, backFromTipMm);
        double back = landmarks.tip().x() - Math.max(frontFromTipMm, backFromTipMm);
        if (front >= landmarks.tip().x() || back <= landmarks.butt().x()) {
            throw new UserFacingException(
                    TEXTS.text("silhouette.the-guard-would-not-lie"),
                    TEXTS.text("silhouette.measure-from-the-tip-along"));
        }
        Guard guard = new Guard(outermost(sides, front), outermost(sides, back));
        return withGuard(Optional.of(guard.map(p -> curve.at(curve.stationOf(p)))));
    }

    /** Returns the knife with the guard that {@link GuardFinder} finds, if any. */
    public Silhouette withGuardFound() {
        return withGuard(GuardFinder.find(outline.sampled(0.1), landmarks.heel().x()));
    }

    /** Returns that of the two points of the outline at x which is farther from the axis. */
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

    /** Mirrors the outline, with its nodes in reverse order, so that it stays counter-clockwise. */
    private Outline mirroredOutline() {
        List<OutlineNode> nodes = new ArrayList<>();
        for (OutlineNode node : outline.nodes()) {
            nodes.add(0, new OutlineNode(mirrored(node.at()), node.sharp()));
        }
        return new Outline(nodes);
    }

    private static Point mirrored(Point p) {
        return new Point(p.x(), -p.y());
    }

    /** Returns the length from heel to tip along the knife, in mm. */
    public double bladeLengthMm() {
        return landmarks.tip().x() - landmarks.heel().x();
    }

    /** Returns the length from butt to tip along the knife, in mm. */
    public double overallLengthMm() {
        var xs = outline.sampled(0.25).points().stream().mapToDouble(Point::x).summaryStatistics();
        return xs.getMax() - xs.getMin();
    }
}
