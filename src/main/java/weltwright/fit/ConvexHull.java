package weltwright.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import weltwright.geometry.Point;

/**
 * A convex hull of points, and paths of a thread pulled tight over points.
 *
 * @param corners counter-clockwise, no three of them in line
 */
public record ConvexHull(List<Point> corners) {
    /**
     * Greatest angle between tangents that replace an arc; a polygon of 10 degree tangents is 0.3 % longer than the
     * arc.
     */
    private static final double ARC_STEP_RAD = Math.toRadians(10);

    private static final Comparator<Point> LEFT_TO_RIGHT = (a, b) -> {
        int order = Double.compare(a.x(), b.x());
        return order != 0 ? order : Double.compare(a.y(), b.y());
    };

    /** Of points with one x the highest comes last, as only a later point can raise the thread. */
    private static final Comparator<Point> BACK_TO_FRONT_RISING = (a, b) -> {
        int order = Double.compare(b.x(), a.x());
        return order != 0 ? order : Double.compare(a.y(), b.y());
    };

    public ConvexHull {
        corners = List.copyOf(corners);
    }

    /** Computes the hull of at least three points that are not all in one line, by Andrew's monotone chain. */
    public static ConvexHull of(List<Point> points) {
        List<Point> sorted = new ArrayList<>(points);
        sorted.sort(LEFT_TO_RIGHT);
        List<Point> corners = chain(sorted);
        Collections.reverse(sorted);
        List<Point> upper = chain(sorted);
        corners.remove(corners.size() - 1);
        corners.addAll(upper.subList(0, upper.size() - 1));
        if (corners.size() < 3) {
            throw new IllegalArgumentException("points in one line have no hull");
        }
        return new ConvexHull(corners);
    }

    /**
     * Computes the path of a thread pulled tight from one end to the other over points between them.
     *
     * @param from its end at the least first coordinate
     * @param to its end at the greatest
     * @param over points that the thread may not pass below; those not between the ends are ignored
     * @return the thread's corners, both ends among them
     */
    public static List<Point> thread(Point from, Point to, List<Point> over) {
        List<Point> points = new ArrayList<>(over.size() + 2);
        for (Point p : over) {
            if (p.x() > from.x() && p.x() <= to.x()) {
                points.add(p);
            }
        }
        points.sort(BACK_TO_FRONT_RISING);
        points.add(0, to);
        points.add(from);
        List<Point> thread = chain(points);
        Collections.reverse(thread);
        return thread;
    }

    /** Returns the hull of all points within {@code byMm} of this hull, arcs replaced by tangents. */
    public ConvexHull grown(double byMm) {
        if (byMm == 0) {
            return this;
        }
        List<Point> grown = new ArrayList<>();
        int n = corners.size();
        for (int i = 0; i < n; i++) {
            Point corner = corners.get(i);
            double before = outward(corners.get((i + n - 1) % n), corner);
            double turn = Math.IEEEremainder(outward(corner, corners.get((i + 1) % n)) - before, 2 * Math.PI);
            int steps = (int) Math.max(1, Math.ceil(turn / ARC_STEP_RAD));
            double reach = byMm / Math.cos(turn / steps / 2);
            for (int k = 0; k < steps; k++) {
                double angle = before + turn * (k + 0.5) / steps;
                grown.add(corner.plus(new Point(reach * Math.cos(angle), reach * Math.sin(angle))));
            }
        }
        return of(grown);
    }

    /** Returns the hull of this and more points. */
    public ConvexHull with(List<Point> more) {
        List<Point> all = new ArrayList<>(corners);
        all.addAll(more);
        return of(all);
    }

    /** Returns the greatest second coordinate. */
    public double highestMm() {
        return corners.stream().mapToDouble(Point::y).max().orElseThrow();
    }

    /** Returns this hull moved along the second coordinate. */
    public ConvexHull lifted(double byMm) {
        return new ConvexHull(
                corners.stream().map(p -> new Point(p.x(), p.y() + byMm)).toList());
    }

    /** Returns the hull of this hull moved along the second coordinate by half of {@code byMm} up and down. */
    public ConvexHull thickened(double byMm) {
        return byMm == 0 ? this : lifted(-byMm / 2).with(lifted(byMm / 2).corners());
    }

    /** Returns the length of the boundary, in mm. */
    public double perimeterMm() {
        double sum = 0;
        for (int i = 0; i < corners.size(); i++) {
            sum += corners.get(i).distance(corners.get((i + 1) % corners.size()));
        }
        return sum;
    }

    /**
     * Returns the length of the parallel curve at a distance outside. By Steiner's formula the parallel of a closed
     * convex curve at distance d is longer by 2πd.
     */
    public double parallelLengthMm(double atMm) {
        return perimeterMm() + 2 * Math.PI * atMm;
    }

    private static double outward(Point from, Point to) {
        return Math.atan2(from.x() - to.x(), to.y() - from.y());
    }

    /** Returns the points in order, without those at which the chain through the rest would not turn left. */
    private static List<Point> chain(List<Point> ordered) {
        List<Point> kept = new ArrayList<>(ordered.size());
        for (Point p : ordered) {
            while (kept.size() > 1 && !turnsLeft(kept.get(kept.size() - 2), kept.get(kept.size() - 1), p)) {
                kept.remove(kept.size() - 1);
            }
            kept.add(p);
        }
        return kept;
    }

    private static boolean turnsLeft(Point a, Point b, Point c) {
        return (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x()) > 0;
    }
}
