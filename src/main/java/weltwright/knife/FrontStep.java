package weltwright.knife;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.LineFit;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A step in a knife's outline where the handle ends: a handle that stands proud of the blade, a guard, or the blade's
 * heel that stands below the handle.
 *
 * <p>Made for a step that is steep, at least a millimetre high and between sides that run about straight for a few
 * millimetres. A notch or a kink is no step.
 *
 * @param onHandle index of the outline's point at its corner next to the handle
 * @param onBlade index of the point at its corner next to the blade
 */
public record FrontStep(int onHandle, int onBlade) {
    private static final double LEAST_HEIGHT_MM = 1.0;

    /** The rise of a step is spread over this much along the knife by blur, at the most. */
    private static final double SPREAD_MM = 0.7;

    /** Sides are taken to run straight this far from a step. */
    private static final double STRAIGHT_MM = 4;

    /** Whether a point of an outline of n points belongs to the step, its two corners included. */
    public boolean has(int index, int n) {
        int width = Math.floorMod(onBlade - onHandle, n);
        return width <= n / 2
                ? Math.floorMod(index - onHandle, n) <= width
                : Math.floorMod(index - onBlade, n) <= n - width;
    }

    /**
     * @param ring as {@link LandmarkProposal} takes it
     * @param sides of the ring
     * @param above whether on the side of positive y
     * @param x where it is looked for
     * @param searchMm how far to either side
     */
    static Optional<FrontStep> find(Polyline ring, Sides sides, boolean above, double x, double searchMm) {
        double at = x;
        double most = 0;
        for (double u = x - searchMm; u <= x + searchMm; u += 0.1) {
            double rise = Math.abs(sides.outward(above, u + SPREAD_MM / 2) - sides.outward(above, u - SPREAD_MM / 2));
            if (rise > most) {
                most = rise;
                at = u;
            }
        }
        LineFit handle = side(sides, above, at - STRAIGHT_MM, at - SPREAD_MM);
        LineFit blade = side(sides, above, at + SPREAD_MM, at + STRAIGHT_MM);
        double height = Math.abs(handle.at(at) - blade.at(at));
        if (Math.min(height, most) < LEAST_HEIGHT_MM || most < 0.6 * height) {
            return Optional.empty();
        }
        double riseX = riseX(sides, above, at, handle.at(at), blade.at(at));
        double sign = above ? 1 : -1;
        return Optional.of(new FrontStep(
                nearest(ring, new Point(riseX, sign * handle.at(riseX))),
                nearest(ring, new Point(riseX, sign * blade.at(riseX)))));
    }

    /** Where the outline passes half-way from one level to the other. */
    private static double riseX(Sides sides, boolean above, double at, double handle, double blade) {
        double middle = (handle + blade) / 2;
        for (double u = at - SPREAD_MM; u <= at + SPREAD_MM; u += 0.02) {
            if (sides.outward(above, u) > middle == blade > middle) {
                return u;
            }
        }
        return at;
    }

    private static LineFit side(Sides sides, boolean above, double from, double to) {
        LineFit line = new LineFit();
        for (double u = from; u <= to; u += 0.1) {
            line.add(u, sides.outward(above, u));
        }
        return line;
    }

    private static int nearest(Polyline ring, Point p) {
        List<Point> points = ring.points();
        int best = 0;
        for (int i = 1; i < points.size(); i++) {
            best = points.get(i).distance(p) < points.get(best).distance(p) ? i : best;
        }
        return best;
    }
}
