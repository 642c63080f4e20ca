package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * The curve |u/a|ⁿ + |v/b|ⁿ = 1 (Lamé's): an ellipse at n = 2, a rectangle with well rounded corners as n grows.
 *
 * @param halfWidth a, in mm; positive
 * @param halfHeight b, in mm; positive
 * @param exponent n; at least 2
 */
public record SuperEllipse(double halfWidth, double halfHeight, double exponent) {

    /**
     * Points of the curve about a centre, counter-clockwise, dense where it is tightly curved. An ellipse's perimeter
     * is met by 96 of them to within 2 parts in 10 000.
     *
     * @param count how many; a multiple of 4 has the four ends of the axes among them
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
        // A cosine that should be zero is 1e-16 or so, and its root is not small enough to pass for zero.
        return Math.abs(c) < 1e-12 ? 0 : Math.copySign(Math.pow(Math.abs(c), 2 / exponent), c);
    }
}
