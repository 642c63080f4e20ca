package weltwright.geometry.fit;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Measured points in order, the last followed by the first.
 *
 * @param points each once
 * @param weight how much each counts; not negative
 * @param station how far along the points each is, in mm, and after the last the length of it all
 */
public record CyclicPoints(List<Point> points, double[] weight, double[] station) {
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
     * How far it is from one point to another along the run: onwards where {@code step} is 1, backwards where it is -1.
     */
    public double away(int from, int to, int step) {
        double s = (station[to] - station[from]) * step;
        return s < 0 ? s + lengthMm() : s;
    }

    /**
     * One of its points.
     *
     * @param s how far it is along the run from where one looks, in mm
     */
    public record Sample(double s, Point at, double weight) {}
}
