package weltwright.knife;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Where tip, heel and butt are likely to be on an outline, and on which side the edge is. Proposed, for the user to
 * look at: from the outline and from where the handle's material ends.
 *
 * @param tip index of a point of the outline
 * @param heel the same
 * @param spineStart the same
 * @param butt the same
 * @param edgeSide what speaks for one side's being the edge
 * @param steps in the outline where the handle ends; possibly none
 * @param heelSigmaMm standard deviation of where the heel is along the knife
 * @param guard if one is to be seen, as two indices
 */
public record LandmarkProposal(
        int tip,
        int heel,
        int spineStart,
        int butt,
        EdgeSideEstimate edgeSide,
        List<HandleFrontStep> steps,
        double heelSigmaMm,
        Optional<GuardAt> guard) {

    /**
     * A step is looked for this far from where the handle is likely to end, and by this many standard deviations and
     * this part of the bow besides: where a handle stands proud of the blade, the rim of its front makes the step.
     */
    private static final double STEP_SEARCH_MM = 0.6;

    private static final double SEARCH_SIGMAS = 2;
    private static final double SEARCH_BOW = 0.7;

    /** The outline passes from one level of a step to the other within a few tenths; its middle is known to this. */
    private static final double STEP_SIGMA_MM = 0.15;

    /** A guard that reaches no farther past the handle's end than this has its front there. */
    private static final double GUARD_FROM_END_MM = 1.5;

    /**
     * Where a guard begins and ends.
     *
     * @param front index of the outline's point at its end towards the tip
     * @param back index of the point at its end towards the butt
     */
    public record GuardAt(int front, int back) {}

    /**
     * Proposes tip, heel and handle of a knife from its outline.
     *
     * @param ring the outline, counter-clockwise, x along the knife towards the tip, its points at about equal
     *     distances
     * @param sure the same without what may not be the knife's: what only that tells of the edge's side is not told
     * @param end where the handle is seen to end
     */
    public static LandmarkProposal of(Polyline ring, Polyline sure, HandleEndLine end) {
        List<Point> points = ring.points();
        OutlineSides sides = new OutlineSides(ring);
        int tip = 0;
        int butt = 0;
        for (int i = 0; i < points.size(); i++) {
            tip = points.get(i).x() > points.get(tip).x() ? i : tip;
            butt = points.get(i).x() < points.get(butt).x() ? i : butt;
        }
        Point tipAt = points.get(tip);
        double buttX = points.get(butt).x();
        EdgeSideEstimate side = EdgeSideEstimate.of(sides, buttX, end.x(), tipAt.x(), tipAt.y())
                .agreeingWith(EdgeSideEstimate.of(new OutlineSides(sure), buttX, end.x(), tipAt.x(), tipAt.y()));
        Optional<Guard> guard = GuardFinder.find(ring, end.x());
        HandleEndLine start = guard.map(g -> beforeGuard(g, end)).orElse(end);
        Start heel = Start.find(ring, sides, side.isUp(), start);
        Start spine = Start.find(ring, sides, !side.isUp(), start);
        List<HandleFrontStep> steps =
                Stream.of(heel.step(), spine.step()).flatMap(Optional::stream).toList();
        Optional<GuardAt> guardAt = guard.map(g -> new GuardAt(nearest(points, g.front()), nearest(points, g.back())));
        return new LandmarkProposal(tip, heel.at(), spine.at(), butt, side, steps, heel.sigmaMm(), guardAt);
    }

    /** Where the colours of a handle end behind a guard of steel, the blade begins only before it. */
    private static HandleEndLine beforeGuard(Guard guard, HandleEndLine end) {
        return guard.frontMm() > end.x() + GUARD_FROM_END_MM
                ? new HandleEndLine(guard.frontMm(), 0, end.slopeSigma(), end.bowMm(), STEP_SIGMA_MM)
                : end;
    }

    private static int nearest(List<Point> points, Point p) {
        int nearest = 0;
        for (int i = 1; i < points.size(); i++) {
            nearest = points.get(i).distance(p) < points.get(nearest).distance(p) ? i : nearest;
        }
        return nearest;
    }

    /** Whether the spine is at positive y. */
    public boolean spineOnLeft() {
        return !edgeSide.isUp();
    }

    /**
     * Where the blade begins on one side.
     *
     * @param at index of a point of the outline
     * @param step that it makes there, if it makes one
     */
    private record Start(int at, Optional<HandleFrontStep> step, double sigmaMm) {
        static Start find(Polyline ring, OutlineSides sides, boolean above, HandleEndLine end) {
            HandleCorner corner = HandleCorner.find(sides, above, end);
            double search = STEP_SEARCH_MM + SEARCH_SIGMAS * corner.sigmaMm() + SEARCH_BOW * end.bowMm();
            return HandleFrontStep.find(ring, sides, above, corner.x(), search, end.bowMm())
                    .map(step -> new Start(step.onBlade(), Optional.of(step), STEP_SIGMA_MM))
                    .orElseGet(
                            () -> new Start(level(ring, sides, above, corner.x()), Optional.empty(), corner.sigmaMm()));
        }

        /** The point of one side that is level with x. */
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
