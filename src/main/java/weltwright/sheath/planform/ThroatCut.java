package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;

/**
 * The line along which a layer is cut off at the throat: from one side of the sheath to the other, and in a folded body
 * back again on the other half.
 *
 * @param edge where it crosses the stitch row on the edge's side
 * @param spine where it crosses the row on the spine's side, or the fold
 * @param foldMm y of the fold, or infinity where there is none
 */
public record ThroatCut(Point edge, Point spine, double foldMm) {
    private static final double FAR_MM = 1000;

    public static ThroatCut straight(double xMm, double foldMm) {
        double y = Double.isInfinite(foldMm) ? 1 : foldMm;
        return new ThroatCut(new Point(xMm, y - 1), new Point(xMm, y), foldMm);
    }

    /** From a place on the fold past a stitch hole, at a distance from that: the tangent to the circle round it. */
    public static ThroatCut fromFold(Point atFold, Point hole, double distanceMm) {
        Point way = hole.minus(atFold);
        double turn = Math.asin(Math.min(1, distanceMm / way.norm()));
        double length = Math.sqrt(Math.max(0, way.dot(way) - distanceMm * distanceMm));
        // The hole lies on the edge's side of the fold, at less y, and deeper than the throat, at more x.
        Point tangent =
                new RigidMotion(-turn, new Point(0, 0)).apply(way.unit()).times(length);
        return new ThroatCut(atFold.plus(tangent), atFold, atFold.y());
    }

    /** By how much x grows for 1 mm towards the spine. */
    public double slope() {
        return (spine.x() - edge.x()) / (spine.y() - edge.y());
    }

    /** Where the line is at a height of the knife's frame. */
    public double atMm(double y) {
        double onThisHalf = y > foldMm ? 2 * foldMm - y : y;
        return edge.x() + slope() * (onThisHalf - edge.y());
    }

    /** How far along the knife one must go to be at a distance inside the line. */
    public double alongMm(double distanceMm) {
        return distanceMm * Math.hypot(1, slope());
    }

    /** All that lies deeper than the line, moved in by {@code byMm} along the knife. */
    public Region below(double byMm) {
        List<Point> round = new ArrayList<>();
        round.add(new Point(atMm(-FAR_MM) + byMm, -FAR_MM));
        if (!Double.isInfinite(foldMm)) {
            round.add(new Point(atMm(foldMm) + byMm, foldMm));
        }
        round.add(new Point(atMm(FAR_MM) + byMm, FAR_MM));
        round.add(new Point(2 * FAR_MM, FAR_MM));
        round.add(new Point(2 * FAR_MM, -FAR_MM));
        Polyline boundary = Polyline.closed(round);
        return Region.of(boundary);
    }
}
