package weltwright.layout.collision;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;

/**
 * A simple polygon prepared for the search: its corners about a reference point, discs inside it, and the sizes by
 * which overlaps are weighed.
 *
 * <p>The reference point is the middle of the polygon's bounding box. A placement turns the shape about that point and
 * then moves it.
 */
public final class OutlineShape {
    final double[] x;
    final double[] y;
    final double[] discX;
    final double[] discY;
    final double[] discRadius;
    private final Point reference;
    private final double area;
    private final double hullArea;
    private final double hullRoot;
    private final double diameter;

    private OutlineShape(List<Point> corners, Point reference, double area) {
        int n = corners.size();
        this.reference = reference;
        this.area = area;
        x = new double[n];
        y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = corners.get(i).x() - reference.x();
            y[i] = corners.get(i).y() - reference.y();
        }
        double longest = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                longest = Math.max(longest, Math.hypot(x[i] - x[j], y[i] - y[j]));
            }
        }
        diameter = longest;
        hullArea = Region.hull(corners).area().getArea();
        hullRoot = Math.sqrt(hullArea);
        List<InnerDisc> discs = InnerDisc.cover(x, y);
        discX = discs.stream().mapToDouble(InnerDisc::x).toArray();
        discY = discs.stream().mapToDouble(InnerDisc::y).toArray();
        discRadius = discs.stream().mapToDouble(InnerDisc::radius).toArray();
    }

    /**
     * Prepares a polygon. Corners that repeat the one before, as the first at the end, are left out; the direction of
     * the corners does not matter.
     *
     * @throws IllegalArgumentException if fewer than three corners remain, or they enclose no area
     */
    public static OutlineShape of(List<Point> corners) {
        List<Point> distinct = new ArrayList<>();
        for (Point corner : corners) {
            if (distinct.isEmpty() || !corner.equals(distinct.get(distinct.size() - 1))) {
                distinct.add(corner);
            }
        }
        while (distinct.size() > 1 && distinct.get(0).equals(distinct.get(distinct.size() - 1))) {
            distinct.remove(distinct.size() - 1);
        }
        Polyline ring = Polyline.closed(distinct);
        double area = ring.signedAreaMm2();
        if (area == 0) {
            throw new IllegalArgumentException("a polygon without area");
        }
        double minX = distinct.stream().mapToDouble(Point::x).min().orElseThrow();
        double maxX = distinct.stream().mapToDouble(Point::x).max().orElseThrow();
        double minY = distinct.stream().mapToDouble(Point::y).min().orElseThrow();
        double maxY = distinct.stream().mapToDouble(Point::y).max().orElseThrow();
        return new OutlineShape(
                area > 0 ? distinct : ring.reversed().points(),
                new Point((minX + maxX) / 2, (minY + maxY) / 2),
                Math.abs(area));
    }

    /** The point of the given polygon about which this shape turns. */
    public Point reference() {
        return reference;
    }

    public double area() {
        return area;
    }

    public double hullArea() {
        return hullArea;
    }

    double hullRoot() {
        return hullRoot;
    }

    /** The greatest distance between two corners. */
    public double diameter() {
        return diameter;
    }
}
