package weltwright.knife;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Proposes tip, heel, butt and guard on an outline, and the side of the edge, from the outline and the line at which
 * the handle's material ends. The user may change them.
 *
 * @param tip index of a point of the outline
 * @param butt index of the farthest point of the handle
 * @param edgeSide which side has the edge, and how certain that is
 * @param heelStart where the edge begins
 * @param spineStart where the spine begins
 * @param guard if one is found, as two indices
 */
public record LandmarkProposal(
        int tip, int butt, EdgeSideEstimate edgeSide, Start heelStart, Start spineStart, Optional<GuardAt> guard) {

    /**
     * A step is searched for within this distance of the estimated end of the handle, plus this many standard
     * deviations and the bow, as where a handle stands proud of the blade the rim of its front makes the step. Chosen
     * by eye.
     */
    private static final double STEP_SEARCH_MM = 0.6;

    private static final double SEARCH_SIGMAS = 2;

    /** A guard whose front lies within this of the handle's end leaves the end where it is. Chosen by eye. */
    private static final double GUARD_FROM_END_MM = 1.5;

    /** Standard deviation of a guard's foot as an end of the handle. Chosen by eye. */
    private static final double GUARD_SIGMA_MM = 0.3;

    /**
     * The two ends of a guard.
     *
     * @param front index of the outline's point at its end towards the tip
     * @param back index of the point at its end towards the butt
     */
    public record GuardAt(int front, int back) {}

    /**
     * Proposes the landmarks of a knife from its outline.
     *
     * @param ring the outline, counter-clockwise, x along the knife towards the tip, its points at about equal
     *     distances
     * @param end where the handle ends in the photo
     */
    public static LandmarkProposal of(Polyline ring, HandleEndLine end) {
        List<Point> points = ring.points();
        OutlineSides sides = new OutlineSides(ring);
        int tip = 0;
        int butt = 0;
        for (int i = 0; i < points.size(); i++) {
            tip = points.get(i).x() > points.get(tip).x() ? i : tip;
            butt = points.get(i).x() < points.get(butt).x() ? i : butt;
        }
        double tipX = points.get(tip).x();
        double buttX = points.get(butt).x();
        EdgeSideEstimate side = EdgeSideEstimate.of(sides, buttX, end.x(), tipX);
        Optional<Guard> guard = GuardFinder.find(ring, end.x());
        HandleEndLine start = guard.map(g -> beforeGuard(g, end)).orElse(end);
        Start heel = Start.find(ring, sides, side.isUp(), start);
        Start spine = Start.find(ring, sides, !side.isUp(), start);
        Optional<GuardAt> guardAt = guard.map(g -> new GuardAt(nearest(points, g.front()), nearest(points, g.back())));
        return new LandmarkProposal(tip, butt, side, heel, spine, guardAt);
    }

    /**
     * Returns the front of a guard that lies farther to the tip than the end of the handle's colours and its rim, as
     * one of steel does.
     */
    private static HandleEndLine beforeGuard(Guard guard, HandleEndLine end) {
        double bowMm = end.rim().bowMm();
        return guard.frontMm() > end.x() + bowMm + GUARD_FROM_END_MM
                ? new HandleEndLine(guard.frontMm(), 0, end.slopeSigma(), GUARD_SIGMA_MM + bowMm, end.rim())
                : end;
    }

    private static int nearest(List<Point> points, Point p) {
        int nearest = 0;
        for (int i = 1; i < points.size(); i++) {
            nearest = points.get(i).distance(p) < points.get(nearest).distance(p) ? i : nearest;
        }
        return nearest;
    }

    /** Returns the index of the outline's point where the edge begins. */
    public int heel() {
        return heelStart.at();
    }

    /** Returns the steps in the outline where the handle ends: of the heel's side, then of the spine's. */
    public List<HandleFrontStep> steps() {
        return Stream.of(heelStart.step(), spineStart.step())
                .flatMap(Optional::stream)
                .toList();
    }

    /** Returns this with each step changed. */
    public LandmarkProposal withSteps(UnaryOperator<HandleFrontStep> change) {
        return new LandmarkProposal(
                tip, butt, edgeSide, heelStart.withStep(change), spineStart.withStep(change), guard);
    }

    /** Returns whether the spine is at positive y. */
    public boolean spineOnLeft() {
        return !edgeSide.isUp();
    }

    /** Returns the probability that the spine is on the left, seen towards the tip. */
    public double spineOnLeftProbability() {
        return edgeSide.spineUpProbability();
    }

    /**
     * The beginning of the blade on one side.
     *
     * @param x of it in the mid-plane, by the handle's end and corners of the outline
     * @param sigmaMm standard deviation of x
     * @param level index of the outline's point nearest to it
     * @param step of the outline there, if there is one
     */
    public record Start(double x, double sigmaMm, int level, Optional<HandleFrontStep> step) {
        static Start find(Polyline ring, OutlineSides sides, boolean above, HandleEndLine end) {
            HandleCorner corner = HandleCorner.find(sides, above, end);
            double search = STEP_SEARCH_MM
                    + SEARCH_SIGMAS * corner.sigmaMm()
                    + end.rim().bowMm();
            Optional<HandleFrontStep> step = HandleFrontStep.find(
                            ring, sides, above, corner.x(), search, end.rim().bowMm())
                    .or(() -> corner.jump()
                            .map(jump -> HandleFrontStep.at(ring, above, jump.x(), jump.handleMm(), jump.bladeMm())));
            return new Start(corner.x(), corner.sigmaMm(), level(ring, sides, above, corner.x()), step);
        }

        /** Returns the index of the outline's point at which the blade begins. */
        public int at() {
            return step.map(HandleFrontStep::onBlade).orElse(level);
        }

        private Start withStep(UnaryOperator<HandleFrontStep> change) {
            return new Start(x, sigmaMm, level, step.map(change));
        }

        /** Returns the index of the point of one side that is nearest to x along the axis. */
        private static int level(Polyline ring, OutlineSides sides, boolean above, double x) {
            List<Point> points = ring.points();
            int level = -1;
            for (int i = 0; i < points.size(); i++) {
                Point p = points.get(i);
                boolean nearer = level < 0
                        || Math.abs(p.x() - x) < Math.abs(points.get(level).x() - x);
                level = p.y() > sides.middle(p.x()) == above && nearer ? i : level;
            }
            return level;
        }
    }
}
