package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * A superellipse (Lamé curve) |u/a|ⁿ + |v/b|ⁿ = 1: an ellipse at n = 2, a rectangle with rounded corners as n grows.
 *
 * @param halfWidth a, in mm; positive
 * @param halfHeight b, in mm; positive
 * @param exponent n; at least 2
 */
public record SuperEllipse(double halfWidth, double halfHeight, double exponent) {

    /**
     * Returns points of the curve about a centre, counter-clockwise, dense where it is tightly curved. The polygon of
     * 96 points has the perimeter of an ellipse to within 2 parts in 10 000.
     *
     * @param count number of points; a multiple of 4 includes the four ends of the axes
     */
    public List<Point> points(Point centre, int count) {
        List<Point> points = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            double t = 2 * Math.PI * i / count;
            points.add(centre.plus(new Point(halfWidth * power(Math.cos(t)), halfHeight * power(Math.sin(t)))));
        }
        return points;
    }

    private double power(double c) {
        // The cosine of a right angle rounds to about 1e-16, whose root is not negligible.
        return Math.abs(c) < 1e-12 ? 0 : Math.copySign(Math.pow(Math.abs(c), 2 / exponent), c);
    }
}
