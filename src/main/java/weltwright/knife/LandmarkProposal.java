package weltwright.knife;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import weltwright.geometry.Corners;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Where tip, heel and butt are likely to be on an outline, and on which side the edge is. Proposed, for the user to look
 * at: from the outline and from where the handle's material ends.
 *
 * @param tip index of a point of the outline
 * @param heel the same
 * @param spineStart the same
 * @param butt the same
 * @param spineOnLeft whether the spine is at positive y
 * @param steps in the outline where the handle ends; possibly none
 */
public record LandmarkProposal(
        int tip, int heel, int spineStart, int butt, boolean spineOnLeft, List<FrontStep> steps) {

    /** The heel's corner is looked for this far from the handle's visible end, besides what perspective may shift it. */
    private static final double HEEL_SEARCH_MM = 2;

    /** The least turn that is taken for the heel's corner. */
    private static final double HEEL_TURN_RAD = Math.toRadians(7);

    /**
     * @param ring the outline, counter-clockwise, x along the knife towards the tip, its points at about equal distances
     * @param handleFront x at which the handle is seen to end
     * @param uncertaintyMm how far perspective may have shifted that
     */
    public static LandmarkProposal of(Polyline ring, double handleFront, double uncertaintyMm) {
        List<Point> points = ring.points();
        Sides sides = new Sides(ring);
        int tip = 0;
        int butt = 0;
        for (int i = 0; i < points.size(); i++) {
            tip = points.get(i).x() > points.get(tip).x() ? i : tip;
            butt = points.get(i).x() < points.get(butt).x() ? i : butt;
        }
        boolean spineOnLeft = !new EdgeSide(
                        sides, points.get(butt).x(), handleFront, points.get(tip).x())
                .isAbove(points.get(tip).y());
        double search = HEEL_SEARCH_MM + uncertaintyMm;
        Optional<FrontStep> heelStep = FrontStep.find(ring, sides, !spineOnLeft, handleFront, search);
        int heel = heelStep.map(FrontStep::onBlade).orElseGet(() -> corner(ring, sides, !spineOnLeft, handleFront, search));
        // With the heel known, the handle's end on the spine side is sought level with it.
        double heelX = points.get(heel).x();
        Optional<FrontStep> spineStep = FrontStep.find(ring, sides, spineOnLeft, heelX, HEEL_SEARCH_MM);
        int spineStart = spineStep
                .map(FrontStep::onBlade)
                .orElseGet(() -> corner(ring, sides, spineOnLeft, heelX, HEEL_SEARCH_MM));
        List<FrontStep> steps =
                Stream.of(heelStep, spineStep).flatMap(Optional::stream).toList();
        return new LandmarkProposal(tip, heel, spineStart, butt, spineOnLeft, steps);
    }

    /** The point of clearest corner on one side near x, or the point level with x where there is none. */
    private static int corner(Polyline ring, Sides sides, boolean above, double x, double search) {
        List<Point> points = ring.points();
        Corners corners = new Corners(ring);
        int sharpest = -1;
        int level = -1;
        double best = HEEL_TURN_RAD;
        for (int i = 0; i < points.size(); i++) {
            Point p = points.get(i);
            double off = Math.abs(p.x() - x);
            if (off > search || p.y() > sides.middle(p.x()) != above) {
                continue;
            }
            if (level < 0 || off < Math.abs(points.get(level).x() - x)) {
                level = i;
            }
            // A hollow turns the outline to the right; that is where the edge begins. Nearness breaks ties.
            double turn = -corners.turnAt(i) - Math.toRadians(2) * off / search;
            if (turn > best) {
                best = turn;
                sharpest = i;
            }
        }
        return sharpest >= 0 ? sharpest : level;
    }
}
