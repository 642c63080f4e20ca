package weltwright.geometry;

import java.util.List;

/**
 * Measured points in order, the last followed by the first.
 *
 * @param points each once
 * @param weight how much each counts; not negative
 * @param station how far along the points each is, in mm, and after the last the length of it all
 */
record MeasuredRun(List<Point> points, double[] weight, double[] station) {
    static MeasuredRun of(List<Point> points, double[] weight) {
        return new MeasuredRun(points, weight, Polyline.closed(points).stationsMm());
    }

    int size() {
        return points.size();
    }

    double lengthMm() {
        return station[points.size()];
    }

    /**
     * How far it is from one point to another along the run: onwards where {@code step} is 1, backwards where it is -1.
     */
    double away(int from, int to, int step) {
        double s = (station[to] - station[from]) * step;
        return s < 0 ? s + lengthMm() : s;
    }

    /**
     * One of its points.
     *
     * @param s how far it is along the run from where one looks, in mm
     */
    record Sample(double s, Point at, double weight) {}
}
