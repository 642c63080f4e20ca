package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.LineString;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;

/**
 * Where water leaves a sheath: a hole next to the knife's tip, in the knife's plane.
 *
 * <p>Between two panels it lies straight past the tip. In a folded body there is room between tip and fold; there it
 * lies to that side of the tip as far as makes the sheath's end smallest, no higher than the tip, and clear of where
 * the leather draws together to the fold.
 */
final class DrainPosition {
    /**
     * Of leather between the hole's rim and the knife: 3 mm, for the tip must not show, or catch in the hole (common
     * practice); and what of them may be lost where leather is laid flat, for the row keeps its length and so does not
     * reach as far. One in a thousand random sheaths loses up to 0.63 mm.
     */
    static final double FROM_KNIFE_MM = 3 + 0.5;

    private static final int STEP_DEG = 5;
    private static final int WIDEST_DEG = 90;

    private DrainPosition() {}

    /** Straight past the tip, for a sheath of two panels. */
    static Point pastTip(Point tip, double radiusMm) {
        return tip.plus(new Point(radiusMm + FROM_KNIFE_MM, 0));
    }

    /**
     * Beside or past the tip, for a folded body.
     *
     * @param radiusMm of the hole, or of the cap that lines it
     * @param bayMm radius of the room that the cavity keeps round the hole's middle
     * @param nose what the sheath's end is drawn together from, but for that room
     * @param foldMm y of the fold
     * @param highestMm the greatest y that the hole's rim may have
     */
    static Point inFold(
            Cavity swept, double radiusMm, double bayMm, List<Point> nose, double foldMm, double highestMm) {
        double away = radiusMm + FROM_KNIFE_MM;
        Point tip = swept.tip();
        LineString edge = swept.sweptEdge().lineString();
        LineString spine = swept.sweptSpine().lineString();
        List<Point> ends = new ArrayList<>(Region.hull(nose).boundary().points());
        // Straight on, and as far to the edge's side as the fold asks for: that keeps off the knife always.
        Point best = new Point(tip.x() + away, Math.min(tip.y(), highestMm - radiusMm));
        double least = endMm2(best, bayMm, ends, foldMm);
        for (int deg = -WIDEST_DEG; deg <= WIDEST_DEG; deg += STEP_DEG) {
            double angle = Math.toRadians(deg);
            Point at = tip.plus(new Point(Math.cos(angle), Math.sin(angle)).times(away));
            var centre = edge.getFactory().createPoint(at.coordinate());
            boolean clear = at.y() + radiusMm <= highestMm
                    && Math.min(edge.distance(centre), spine.distance(centre)) > away - 1e-6;
            double end = clear ? endMm2(at, bayMm, ends, foldMm) : Double.POSITIVE_INFINITY;
            if (end < least) {
                least = end;
                best = at;
            }
        }
        return best;
    }

    /** The area of the sheath's end, laid open, with the hole at some place. */
    private static double endMm2(Point at, double bayMm, List<Point> nose, double foldMm) {
        List<Point> half = new ArrayList<>(nose);
        half.addAll(Polyline.closed(Region.disc(at, bayMm).boundary().points())
                .resampled(bayMm / 2)
                .points());
        List<Point> open = new ArrayList<>(half);
        half.forEach(p -> open.add(new Point(p.x(), 2 * foldMm - p.y())));
        return Region.hull(open).area().getArea();
    }
}
