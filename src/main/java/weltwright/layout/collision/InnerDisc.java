package weltwright.layout.collision;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * A disc inside a polygon. A few large ones, none of which reaches into another, stand for the polygon where the depth
 * of an overlap is estimated.
 *
 * <p>Each disc is found by the branch and bound search for the pole of inaccessibility: a square whose middle lies at
 * distance d from the boundary cannot hold a disc larger than d plus half its diagonal. Gardeyn, Vanden Berghe and
 * Wauters use such discs as stand-ins for shapes ("Decoupling geometry from optimization in 2D irregular cutting and
 * packing problems", 2025).
 *
 * @param x middle, mm
 * @param y middle, mm
 * @param radius mm
 */
record InnerDisc(double x, double y, double radius) {
    /** A disc is searched to this part of its radius. Chosen by eye. */
    private static final double PRECISION = 0.02;

    /** Measured: with 16 and more, published instances become no denser in equal time, but each try dearer. */
    private static final int MOST = 8;

    /** Discs smaller than this part of the first one are left out: they hardly add to the measure. Chosen by eye. */
    private static final double LEAST_RADIUS_SHARE = 0.05;

    private record Square(double x, double y, double half, double distance) {
        double bound() {
            return distance + half * Math.sqrt(2);
        }
    }

    /**
     * Returns up to {@link #MOST} discs inside a polygon, the largest first, each to {@link #PRECISION}.
     *
     * @param x of the corners in order, either way round, no two in a row alike; not closed by a repeated corner; mm
     * @param y of the corners, mm
     */
    static List<InnerDisc> cover(double[] x, double[] y) {
        List<InnerDisc> discs = new ArrayList<>();
        while (discs.size() < MOST) {
            InnerDisc next = largest(x, y, discs);
            if (!discs.isEmpty() && next.radius < LEAST_RADIUS_SHARE * discs.get(0).radius) {
                break;
            }
            discs.add(next);
        }
        return discs;
    }

    private static InnerDisc largest(double[] x, double[] y, List<InnerDisc> others) {
        double minX = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double minY = Double.POSITIVE_INFINITY;
        double maxY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            minX = Math.min(minX, x[i]);
            maxX = Math.max(maxX, x[i]);
            minY = Math.min(minY, y[i]);
            maxY = Math.max(maxY, y[i]);
        }
        double half = Math.max(maxX - minX, maxY - minY) / 2;
        PriorityQueue<Square> queue =
                new PriorityQueue<>(Comparator.comparingDouble(Square::bound).reversed());
        Square best = square((minX + maxX) / 2, (minY + maxY) / 2, half, x, y, others);
        queue.add(best);
        while (!queue.isEmpty() && queue.element().bound() > best.distance + PRECISION * Math.abs(best.distance)) {
            Square widest = queue.remove();
            double quarter = widest.half / 2;
            // A polygon whose discs fill it exactly would be divided for ever.
            if (quarter < 1e-6 * half) {
                break;
            }
            for (int part = 0; part < 4; part++) {
                Square square = square(
                        widest.x + (part % 2 == 0 ? -quarter : quarter),
                        widest.y + (part < 2 ? -quarter : quarter),
                        quarter,
                        x,
                        y,
                        others);
                if (square.distance > best.distance) {
                    best = square;
                }
                queue.add(square);
            }
        }
        return new InnerDisc(best.x, best.y, best.distance);
    }

    private static Square square(double px, double py, double half, double[] x, double[] y, List<InnerDisc> others) {
        double distance = signedDistance(px, py, x, y);
        for (InnerDisc other : others) {
            distance = Math.min(distance, Math.hypot(px - other.x, py - other.y) - other.radius);
        }
        return new Square(px, py, half, distance);
    }

    /**
     * Returns the distance from a point to the boundary, negative outside; the ray test counts crossings to the right.
     */
    private static double signedDistance(double px, double py, double[] x, double[] y) {
        double least2 = Double.POSITIVE_INFINITY;
        boolean inside = false;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            double ex = x[j] - x[i];
            double ey = y[j] - y[i];
            double t = Math.max(0, Math.min(1, ((px - x[i]) * ex + (py - y[i]) * ey) / (ex * ex + ey * ey)));
            double dx = x[i] + t * ex - px;
            double dy = y[i] + t * ey - py;
            least2 = Math.min(least2, dx * dx + dy * dy);
            if (y[i] > py != y[j] > py && px < x[i] + (py - y[i]) / ey * ex) {
                inside = !inside;
            }
        }
        return inside ? Math.sqrt(least2) : -Math.sqrt(least2);
    }
}
