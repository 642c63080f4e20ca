package weltwright.fit;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Point;

/**
 * The shortest path from one pin to another, from left to right, that keeps a clearance from points below it. It
 * consists of straight lines and of arcs of the clearance about the outermost points. Its length is exact: the straight
 * ends by Pythagoras, the rest by Steiner's formula, as the length of the hull of the points touched plus the clearance
 * times the angle by which the path turns.
 *
 * @param risingMm length from the first pin to the ridge, where the path is level; 0 where it only falls
 * @param fallingMm length from the ridge to the other pin
 * @param ridgeMm first coordinate of the ridge
 */
public record TautFibre(double risingMm, double fallingMm, double ridgeMm) {

    /**
     * Computes the path between two pins.
     *
     * @param over points to keep clear of; those not between the pins are ignored
     * @param clearanceMm least distance from each of them; for a point nearer to a pin the path leaves the pin square
     *     to the line to it
     */
    static TautFibre between(Point from, Point to, List<Point> over, double clearanceMm) {
        List<Point> under =
                over.stream().filter(p -> p.x() > from.x() && p.x() <= to.x()).toList();
        Point way = to.minus(from);
        Optional<Tangent> rising = Tangent.steepest(from, under, clearanceMm, 1);
        if (rising.isEmpty() || way.cross(rising.get().along) <= 0) {
            return way.y() > 0 ? new TautFibre(way.norm(), 0, to.x()) : new TautFibre(0, way.norm(), from.x());
        }
        Tangent up = rising.get();
        // Where the path touches several points in line, rounding decides which. It must not leave one and return to
        // it.
        List<Point> ahead = under.stream().filter(p -> p.x() >= up.at.x()).toList();
        Tangent down = Tangent.steepest(to, ahead, clearanceMm, -1).orElseThrow();
        double rise = Math.atan2(up.along.y(), up.along.x());
        double fall = Math.atan2(down.along.y(), -down.along.x());
        List<Point> touched = up.at.equals(down.at) ? List.of(up.at) : ConvexHull.thread(up.at, down.at, under);
        int ridge = 0;
        for (int i = 1; i < touched.size(); i++) {
            ridge = touched.get(i).y() > touched.get(ridge).y() ? i : ridge;
        }
        double risingMm = up.lengthMm + length(touched.subList(0, ridge + 1));
        double fallingMm = length(touched.subList(ridge, touched.size())) + down.lengthMm;
        if (rise <= 0) {
            return new TautFibre(0, risingMm + fallingMm + clearanceMm * (rise + fall), from.x());
        }
        if (fall <= 0) {
            return new TautFibre(risingMm + fallingMm + clearanceMm * (rise + fall), 0, to.x());
        }
        return new TautFibre(
                risingMm + clearanceMm * rise,
                fallingMm + clearanceMm * fall,
                touched.get(ridge).x());
    }

    double lengthMm() {
        return risingMm + fallingMm;
    }

    private static double length(List<Point> chain) {
        double sum = 0;
        for (int i = 1; i < chain.size(); i++) {
            sum += chain.get(i - 1).distance(chain.get(i));
        }
        return sum;
    }

    /**
     * A tangent from a pin to the circle of the clearance about a point, from above.
     *
     * @param at the point
     * @param along the line's direction
     * @param lengthMm from the pin to where it touches
     */
    private record Tangent(Point at, Point along, double lengthMm) {

        /** Returns the tangent above all circles; {@code way} is 1 from the left pin, -1 from the right one. */
        static Optional<Tangent> steepest(Point pin, List<Point> under, double clearanceMm, int way) {
            @Nullable Tangent steepest = null;
            for (Point p : under) {
                Point off = p.minus(pin);
                double length = Math.sqrt(Math.max(0, off.dot(off) - clearanceMm * clearanceMm));
                Point along = off.times(length).plus(off.left().times(way * clearanceMm));
                if (steepest == null || way * steepest.along.cross(along) > 0) {
                    steepest = new Tangent(p, along, length);
                }
            }
            return Optional.ofNullable(steepest);
        }
    }
}
