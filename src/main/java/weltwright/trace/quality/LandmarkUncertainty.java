package weltwright.trace.quality;

import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;

/**
 * How far the proposed landmarks are to be trusted.
 *
 * @param bladeLength95Mm the blade's length is this near to the true one in 95 of 100 traces
 * @param edgeSure how probable it is that the edge is on the side where it is proposed, from 0.5 to 1; 1 where both
 *     sides of the blade are alike, as a dagger's are
 */
public record LandmarkUncertainty(double bladeLength95Mm, double edgeSure) {
    /** What is less sure than this is asked. */
    private static final double SURE = 0.9;

    /** 95 of 100 values of a normal distribution lie within this many standard deviations. */
    private static final double WITHIN_95 = 1.96;

    /** A side whose edge does not show from this near to the tip on leaves open where the tip is. */
    private static final double AT_TIP_MM = 1.5;

    /** Blur rounds off as much of any tip, and moves it by a part of that only. */
    private static final double ROUNDED_MM = 1;

    /** How far a side is looked at: what holds a tip lies nearer. */
    private static final double HOLDS_MM = 6;

    /** The angle of a tip is that of chords so long. */
    private static final double WEDGE_MM = 5;

    /** Of any thinner wedge nothing would be left to see. */
    private static final double LEAST_SINE = 0.1;

    private static final double STEP_MM = 0.25;

    public static LandmarkUncertainty of(SilhouetteBuilder.Built built, ErrorBudget error) {
        Polyline outline = built.silhouette().outline().sampled(STEP_MM);
        double tip95 = meeting95(outline, built.silhouette().landmarks().tip(), error.error95Mm());
        for (int side : new int[] {1, -1}) {
            tip95 = Math.max(tip95, unseenMm(built, side));
        }
        return new LandmarkUncertainty(
                Math.hypot(Math.hypot(error.error95Mm(), tip95), WITHIN_95 * built.heelSigmaMm()),
                built.edgeSide().probability(error.error95Mm() / WITHIN_95));
    }

    /**
     * How far along a blade the point may lie at which its two sides meet, when each of them is off by so much to
     * either side: two lines at an angle t that are moved apart by e meet e / (2 sin(t/2)) farther on; both sides err
     * by themselves, so by the root of two of what one does.
     */
    private static double meeting95(Polyline outline, Point tip, double error95Mm) {
        double at = outline.stationOf(tip);
        Point before = outline.at(at - WEDGE_MM).minus(tip).unit();
        Point after = outline.at(at + WEDGE_MM).minus(tip).unit();
        double halfAngle = Math.acos(Math.max(-1, Math.min(1, before.dot(after)))) / 2;
        return error95Mm / Math.sqrt(2) / Math.max(LEAST_SINE, Math.sin(halfAngle));
    }

    /**
     * How much of one side of the blade does not show from the tip on, beyond what blur rounds off: so far the other
     * side may run on, or not reach.
     *
     * @param side 1 for the side that follows the tip, counter-clockwise, -1 for the one that leads to it
     */
    private static double unseenMm(SilhouetteBuilder.Built built, int side) {
        Polyline ring = built.ring();
        int n = ring.points().size();
        int tip = 0;
        for (int i = 1; i < n; i++) {
            Point at = built.silhouette().landmarks().tip();
            tip = ring.points().get(i).distance(at) < ring.points().get(tip).distance(at) ? i : tip;
        }
        double unseen = 0;
        double far = 0;
        double last = AT_TIP_MM - UncertainStretch.JOINED_MM;
        for (int i = tip; far < HOLDS_MM; i = Math.floorMod(i + side, n)) {
            double step = ring.points().get(i).distance(ring.points().get(Math.floorMod(i + side, n)));
            if (built.certainty()[i] < UncertainStretch.WEAK) {
                unseen += far > ROUNDED_MM ? step : 0;
                last = far;
            } else if (far - last > UncertainStretch.JOINED_MM) {
                return unseen;
            }
            far += step;
        }
        return unseen;
    }

    /** The same, the side having been told by somebody who saw the knife. */
    public LandmarkUncertainty withEdgeTold() {
        return new LandmarkUncertainty(bladeLength95Mm, 1);
    }

    /** Whether somebody should look which side is the edge. */
    public boolean asksForEdge() {
        return edgeSure < SURE;
    }
}
