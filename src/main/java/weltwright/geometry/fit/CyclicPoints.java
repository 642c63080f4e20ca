package weltwright.geometry.fit;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A cyclic sequence of weighted measured points: the last is followed by the first.
 *
 * @param points in order, in mm; the first is not repeated at the end
 * @param weight of each point in a least squares fit; not negative
 * @param station arc length from the first point to each point, in mm; one entry more than points, the last of which is
 *     the length of the closed chain
 */
public record CyclicPoints(List<Point> points, double[] weight, double[] station) {
    /** Computes the stations of points. */
    public static CyclicPoints of(List<Point> points, double[] weight) {
        return new CyclicPoints(points, weight, Polyline.closed(points).stationsMm());
    }

    public int size() {
        return points.size();
    }

    public double lengthMm() {
        return station[points.size()];
    }

    /**
     * The arc length from one point to another along the chain, in mm, from 0 up to its length.
     *
     * @param from index of the first point
     * @param to index of the second point
     * @param step 1 to measure in the order of the points, -1 against it
     */
    public double distanceAlong(int from, int to, int step) {
        double s = (station[to] - station[from]) * step;
        return s < 0 ? s + lengthMm() : s;
    }

    /**
     * A weighted point on part of the chain.
     *
     * @param s arc length from a reference point of the chain, in mm
     * @param at position, in mm
     * @param weight in a least squares fit; not negative
     */
    public record Sample(double s, Point at, double weight) {}
}
