package weltwright.knife;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.LineFit;

/**
 * A step in an outline where the handle ends: of a handle that stands proud of the blade, a guard, or a heel that
 * stands below the handle.
 *
 * <p>Made for steep steps at least a millimetre high between sides that are about straight for a few millimetres. A
 * notch or a kink is not a step.
 *
 * @param onHandle index of the outline's point at its corner next to the handle
 * @param onBlade index of the point at its corner next to the blade
 */
public record HandleFrontStep(int onHandle, int onBlade) {
    /** Chosen by eye. */
    private static final double LEAST_HEIGHT_MM = 1.0;

    /** Greatest length along the knife over which blur spreads a step. Chosen by eye. */
    private static final double SPREAD_MM = 0.7;

    /** Length beside a step over which sides are taken to be straight. Chosen by eye. */
    private static final double STRAIGHT_MM = 3.3;

    /** Distance behind the front at which the handle's middle is measured. Chosen by eye. */
    private static final double BEHIND_MM = 2;

    /** Least share of a step's height that is passed within its spread. Chosen by eye. */
    private static final double STEEP_PART = 0.6;

    /** Least ratio of the height of a step spread by a rim to the apparent height of a kink. Chosen by eye. */
    private static final double CLEAR_OF_KINK = 2;

    /** Returns whether a point of an outline of n points belongs to the step, its two corners included. */
    public boolean has(int index, int n) {
        int width = Math.floorMod(onBlade - onHandle, n);
        return width <= n / 2
                ? Math.floorMod(index - onHandle, n) <= width
                : Math.floorMod(index - onBlade, n) <= n - width;
    }

    /**
     * Finds a step near a place; empty where there is none.
     *
     * @param ring as {@link LandmarkProposal} takes it
     * @param sides of the ring
     * @param above whether on the side of positive y
     * @param x the place
     * @param searchMm search distance to either side
     * @param bowMm bow of the rim of the handle's front, see {@link HandleEndLine}
     */
    static Optional<HandleFrontStep> find(
            Polyline ring, OutlineSides sides, boolean above, double x, double searchMm, double bowMm) {
        Rise sharp = Rise.find(sides, above, x, searchMm, SPREAD_MM);
        if (sharp.isStep()) {
            return Optional.of(sharp.in(ring, above));
        }
        // The rim of a thick front that stands proud of the blade, seen at an angle, passes from one level
        // to the other over a longer distance. A rise longer than high, or one whose half height is not
        // near its middle, is a notch. The apparent height of a kink is the difference of the sides'
        // slopes times the spread.
        double rim = sharp.rimMm(sides, above, bowMm);
        double spread = SPREAD_MM + rim;
        Rise bowed = Rise.find(sides, above, x, searchMm, spread);
        double height = bowed.handleMm() - bowed.bladeMm();
        boolean isStep = rim > 0
                && bowed.isStep()
                && height > Math.max(rim, CLEAR_OF_KINK * bowed.kink() * spread)
                && Math.abs(bowed.middleX() - bowed.x()) < spread / 2;
        return isStep ? Optional.of(bowed.in(ring, above)) : Optional.empty();
    }

    /** Returns the step at x of a side between two distances from the axis. */
    static HandleFrontStep at(Polyline ring, boolean above, double x, double handleMm, double bladeMm) {
        double sign = above ? 1 : -1;
        return new HandleFrontStep(
                nearest(ring, new Point(x, sign * handleMm)), nearest(ring, new Point(x, sign * bladeMm)));
    }

    /**
     * The greatest rise or fall of one side within a spread.
     *
     * @param x its middle
     * @param mostMm its amount
     * @param handleMm distance of the handle's side from the axis there, extrapolated by a straight line
     * @param bladeMm distance of the blade's side likewise
     * @param kink difference of the slopes of the two
     * @param middleX where the side passes half the height
     */
    private record Rise(double x, double mostMm, double handleMm, double bladeMm, double kink, double middleX) {
        static Rise find(OutlineSides sides, boolean above, double near, double searchMm, double spread) {
            double at = near;
            double most = 0;
            for (double u = near - searchMm; u <= near + searchMm; u += 0.1) {
                double rise = Math.abs(sides.outward(above, u + spread / 2) - sides.outward(above, u - spread / 2));
                if (rise > most) {
                    most = rise;
                    at = u;
                }
            }
            LineFit handle = side(sides, above, at - spread - STRAIGHT_MM, at - spread);
            LineFit blade = side(sides, above, at + spread, at + spread + STRAIGHT_MM);
            double kink = Math.abs(handle.slope() - blade.slope());
            double middle = middleX(sides, above, at, spread, handle.at(at), blade.at(at));
            return new Rise(at, most, handle.at(at), blade.at(at), kink, middle);
        }

        boolean isStep() {
            double height = Math.abs(handleMm - bladeMm);
            return Math.min(height, mostMm) >= LEAST_HEIGHT_MM && mostMm >= STEEP_PART * height;
        }

        /** Returns the length along the knife over which an elliptic rim with this bow passes the step's height. */
        double rimMm(OutlineSides sides, boolean above, double bowMm) {
            double middle = (above ? 1 : -1) * sides.middle(x - BEHIND_MM);
            double part = (bladeMm - middle) / (handleMm - middle);
            return handleMm > bladeMm ? bowMm * Math.sqrt(Math.max(0, 1 - part * part)) : 0;
        }

        HandleFrontStep in(Polyline ring, boolean above) {
            return at(ring, above, middleX, handleMm, bladeMm);
        }

        private static double middleX(
                OutlineSides sides, boolean above, double at, double spread, double handle, double blade) {
            double middle = (handle + blade) / 2;
            for (double u = at - spread; u <= at + spread; u += 0.02) {
                if (sides.outward(above, u) > middle == blade > middle) {
                    return u;
                }
            }
            return at;
        }

        private static LineFit side(OutlineSides sides, boolean above, double from, double to) {
            LineFit line = new LineFit();
            for (double u = from; u <= to; u += 0.1) {
                line.add(u, sides.outward(above, u));
            }
            return line;
        }
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
