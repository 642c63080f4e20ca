package weltwright.trace;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * How far the proposed landmarks are to be trusted.
 *
 * @param bladeLength95Mm the blade's length is this near to the true one in 95 of 100 traces
 * @param edgeSure how probable it is that the edge is on the side where it is proposed, from 0.5 to 1; 1 where both sides
 *     of the blade are alike, as a dagger's are
 */
public record LandmarkError(double bladeLength95Mm, double edgeSure) {
    /** What is less sure than this is asked. */
    private static final double SURE = 0.9;

    /** 95 of 100 values of a normal distribution lie within this many standard deviations. */
    private static final double WITHIN_95 = 1.96;

    /** A stretch without a clear edge that comes this near to the tip leaves open where the tip is. */
    private static final double AT_TIP_MM = 1.5;

    /** The angle of a tip is that of chords so long. */
    private static final double WEDGE_MM = 5;

    /** Of any thinner wedge nothing would be left to see. */
    private static final double LEAST_SINE = 0.1;

    private static final double STEP_MM = 0.25;

    static LandmarkError of(SilhouetteBuilder.Built built, ErrorBudget error, List<Unsure> unsure) {
        Polyline outline = built.silhouette().outline().sampled(STEP_MM);
        double tip95 = meeting95(outline, built.silhouette().landmarks().tip(), error.error95Mm());
        for (Unsure stretch : unsure) {
            Polyline along = stretch.along(outline);
            boolean atTip = along.points().stream()
                    .anyMatch(p -> p.distance(built.silhouette().landmarks().tip()) < AT_TIP_MM);
            tip95 = atTip ? Math.max(tip95, along.lengthMm() / 2) : tip95;
        }
        return new LandmarkError(
                Math.hypot(Math.hypot(error.error95Mm(), tip95), WITHIN_95 * built.heelSigmaMm()),
                built.edgeSide().sure(error.error95Mm() / WITHIN_95));
    }

    /**
     * How far along a blade the point may lie at which its two sides meet, when each of them is off by so much to either
     * side: two lines at an angle t that are moved apart by e meet e / (2 sin(t/2)) farther on; both sides err by
     * themselves, so by the root of two of what one does.
     */
    private static double meeting95(Polyline outline, Point tip, double error95Mm) {
        double at = outline.stationOf(tip);
        Point before = outline.at(at - WEDGE_MM).minus(tip).unit();
        Point after = outline.at(at + WEDGE_MM).minus(tip).unit();
        double halfAngle = Math.acos(Math.max(-1, Math.min(1, before.dot(after)))) / 2;
        return error95Mm / Math.sqrt(2) / Math.max(LEAST_SINE, Math.sin(halfAngle));
    }

    /** The same, the side having been told by somebody who saw the knife. */
    LandmarkError withEdgeTold() {
        return new LandmarkError(bladeLength95Mm, 1);
    }

    /** Whether somebody should look which side is the edge. */
    public boolean asksForEdge() {
        return edgeSure < SURE;
    }
}
