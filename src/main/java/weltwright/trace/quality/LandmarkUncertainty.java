package weltwright.trace.quality;

import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;

/**
 * The uncertainty of proposed landmarks.
 *
 * @param bladeLength95Mm error of the blade's length at 95 %
 * @param edgeSure probability that the edge is on the side where it is proposed, from 0.5 to 1; 1 where the user has
 *     told it, or that both sides of the blade are sharp
 */
public record LandmarkUncertainty(double bladeLength95Mm, double edgeSure) {
    /** Probability below which the user is asked for the edge's side; chosen by eye. */
    private static final double SURE = 0.9;

    /** Half the width of the 95 % interval of a normal distribution, in standard deviations. */
    private static final double WITHIN_95 = 1.96;

    /** Greatest distance from the tip at which the edge of a side must begin to hold the tip; chosen by eye. */
    private static final double AT_TIP_MM = 1.5;

    /** Length of a tip that blur rounds off without moving it by as much; chosen by eye. */
    private static final double ROUNDED_MM = 1;

    /** Distance from the tip up to which a side is examined; chosen by eye. */
    private static final double EXAMINED_MM = 6;

    /** Length of the chords between which the angle of the tip is measured; chosen by eye. */
    private static final double WEDGE_MM = 5;

    /** Least sine of half the tip's angle: thinner wedges are not visible; chosen by eye. */
    private static final double LEAST_SINE = 0.1;

    /** Distance of the outline's points; chosen by eye. */
    private static final double STEP_MM = 0.25;

    /** Estimates the uncertainty of a silhouette's landmarks from the outline's error and the edge at its tip. */
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
     * Returns the error along the blade of the point in which its sides meet. Two lines at an angle t that are moved
     * apart by e meet e / (2 sin(t/2)) farther on; the errors of both sides are independent, which makes e √2 times the
     * error of one.
     */
    private static double meeting95(Polyline outline, Point tip, double error95Mm) {
        double at = outline.stationOf(tip);
        Point before = outline.at(at - WEDGE_MM).minus(tip).unit();
        Point after = outline.at(at + WEDGE_MM).minus(tip).unit();
        double halfAngle = Math.acos(Math.max(-1, Math.min(1, before.dot(after)))) / 2;
        return error95Mm / Math.sqrt(2) / Math.max(LEAST_SINE, Math.sin(halfAngle));
    }

    /**
     * Returns the length of weak edge along one side from the tip on, beyond what blur rounds off: the tip may lie by
     * as much farther out or in.
     *
     * @param side 1 for the side that follows the tip counter-clockwise, −1 for the one before it
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
        for (int i = tip; far < EXAMINED_MM; i = Math.floorMod(i + side, n)) {
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

    /** Returns this with the edge's side certain, after the user has confirmed it. */
    public LandmarkUncertainty withEdgeConfirmed() {
        return new LandmarkUncertainty(bladeLength95Mm, 1);
    }

    /** Returns whether the user should be asked which side is the edge. */
    public boolean asksForEdge() {
        return edgeSure < SURE;
    }
}
