package weltwright.assembly;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds the point of a chain that is nearest to another, for many points and one chain. The least distance to some of
 * the chain's points bounds the distance; a segment that is farther away by d is followed by a length d of the chain
 * that is too far away as well, which is passed over.
 */
final class FootFinder {
    /** More than the rounding of a length. */
    private static final double ROUNDING_MM = 1e-9;

    /** Of how many points one gives a bound. Chosen by eye. */
    private static final int EVERY = 8;

    private final List<Point> points;
    private final boolean closed;
    /** For each segment the length of the chain up to its end. Segment i ends at point i. */
    private final double[] endMm;

    FootFinder(Polyline chain) {
        points = chain.points();
        closed = chain.closed();
        endMm = new double[points.size()];
        // An open chain has no segment 0.
        endMm[0] = closed ? points.get(points.size() - 1).distance(points.get(0)) : 0;
        for (int i = 1; i < endMm.length; i++) {
            endMm[i] = endMm[i - 1] + points.get(i - 1).distance(points.get(i));
        }
    }

    /**
     * The point of a chain nearest to another.
     *
     * @param along direction of the chain there
     * @param beyondEnd whether it is an end of the chain and the other point lies past it
     */
    record Foot(Point at, Point along, double distanceMm, boolean beyondEnd) {}

    /** Returns the nearest point of the chain; of several, the first. */
    Foot of(Point p) {
        int last = points.size() - 1;
        int nearest = 0;
        double share = 0;
        double least = Double.POSITIVE_INFINITY;
        double bound = boundMm(p);
        int i = closed ? 0 : 1;
        while (i <= last) {
            Point a = points.get(i == 0 ? last : i - 1);
            Point b = points.get(i);
            double x = b.x() - a.x();
            double y = b.y() - a.y();
            double t = ((p.x() - a.x()) * x + (p.y() - a.y()) * y) / (x * x + y * y);
            double on = Math.max(0, Math.min(1, t));
            double offX = a.x() + on * x - p.x();
            double offY = a.y() + on * y - p.y();
            double distance = Math.sqrt(offX * offX + offY * offY);
            if (distance < least) {
                least = distance;
                nearest = i;
                share = t;
            }
            bound = Math.min(bound, least);
            double tooFarUpToMm = endMm[i] + distance - bound - ROUNDING_MM;
            i++;
            while (i <= last && endMm[i] <= tooFarUpToMm) {
                i++;
            }
        }
        Point from = points.get(nearest == 0 ? last : nearest - 1);
        Point to = points.get(nearest);
        boolean beyond = !closed && ((share < 0 && nearest == 1) || (share > 1 && nearest == last));
        return new Foot(
                from.towards(to, Math.max(0, Math.min(1, share))),
                to.minus(from).unit(),
                least,
                beyond);
    }

    private double boundMm(Point p) {
        double bound = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points.size(); i += EVERY) {
            bound = Math.min(bound, p.distance(points.get(i)));
        }
        return bound;
    }
}
