package weltwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * A chain of straight segments, open or closed, addressed by arc length. A curve is represented by samples; a chord of
 * length c lies within c²/8r of an arc of radius r.
 *
 * <p>A closed chain does not repeat its first point: the segment from the last point to the first is implied.
 *
 * <p>Points at many arc lengths are found by binary search in the table of stations. The JTS class
 * {@code LengthIndexedLine} has no such table: to resample 1,500 points it needed 33 ms where this class needed 0.08
 * ms, and to project a point on them 36 µs against 19 µs.
 *
 * @param points at least two, or three where closed; in mm
 * @param closed whether the last point is joined to the first
 */
public record Polyline(List<Point> points, boolean closed) {
    private static final GeometryFactory JTS = new GeometryFactory();

    /** Points nearer than this differ by rounding only: it exceeds the rounding of a length of many metres. */
    private static final double COINCIDENT_MM = 1e-9;

    public Polyline {
        points = List.copyOf(points);
        if (points.size() < (closed ? 3 : 2)) {
            throw new IllegalArgumentException("a chain of " + points.size() + " points");
        }
    }

    /** An open chain of at least two points. */
    public static Polyline open(List<Point> points) {
        return new Polyline(points, false);
    }

    /** A closed chain of at least three points, the first of which is not repeated. */
    public static Polyline closed(List<Point> points) {
        return new Polyline(points, true);
    }

    /** The boundary of a JTS polygon's shell. */
    public static Polyline shell(Polygon polygon) {
        Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
        return closed(Arrays.stream(ring, 0, ring.length - 1).map(Point::of).toList());
    }

    /** The length of the chain, of a closed one with the segment from the last point to the first. */
    public double lengthMm() {
        double sum = 0;
        for (int i = 0; i < segments(); i++) {
            sum += point(i).distance(point(i + 1));
        }
        return sum;
    }

    /** Arc lengths from the first point to each point; a closed chain has one entry more, its whole length. */
    public double[] stationsMm() {
        double[] s = new double[segments() + 1];
        for (int i = 0; i < segments(); i++) {
            s[i + 1] = s[i] + point(i).distance(point(i + 1));
        }
        return s;
    }

    /**
     * The point at an arc length from the first point. The arc length is clamped to the ends of an open chain, and
     * reduced modulo the length of a closed one.
     */
    public Point at(double sMm) {
        return at(sMm, stationsMm());
    }

    /** The points at several arc lengths, as {@link #at(double)}. */
    public List<Point> at(double[] stations) {
        double[] s = stationsMm();
        return Arrays.stream(stations).mapToObj(station -> at(station, s)).toList();
    }

    private Point at(double sMm, double[] s) {
        double total = s[s.length - 1];
        double at = closed ? sMm - total * Math.floor(sMm / total) : Math.max(0, Math.min(total, sMm));
        int found = Arrays.binarySearch(s, at);
        int i = Math.min(found >= 0 ? found : -found - 2, segments() - 1);
        double span = s[i + 1] - s[i];
        return span == 0 ? point(i) : point(i).towards(point(i + 1), (at - s[i]) / span);
    }

    /**
     * Resamples the chain at equal steps of arc length.
     *
     * @param stepMm wanted step; the nearest to it of which a whole number fits is taken
     */
    public Polyline resampled(double stepMm) {
        double total = lengthMm();
        int steps = (int) Math.max(closed ? 3 : 1, Math.round(total / stepMm));
        double[] stations = new double[closed ? steps : steps + 1];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = i * total / steps;
        }
        return new Polyline(at(stations), closed);
    }

    /**
     * Resamples the chain and smooths it by a Gaussian filter along the arc, which is cut off at three standard
     * deviations. Corners and features narrower than about {@code sigmaMm} are rounded off. Near the ends of an open
     * chain the filter is narrowed symmetrically; its end points stay.
     *
     * @param sigmaMm standard deviation of the filter
     * @param stepMm as in {@link #resampled}
     */
    public Polyline smoothed(double sigmaMm, double stepMm) {
        Polyline even = resampled(stepMm);
        int n = even.points.size();
        double step = even.lengthMm() / even.segments();
        int reach = (int) Math.min(n / 2.0, Math.ceil(3 * sigmaMm / step));
        List<Point> smooth = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            Point sum = new Point(0, 0);
            double weights = 0;
            int near = closed ? reach : Math.min(reach, Math.min(i, n - 1 - i));
            for (int k = -near; k <= near; k++) {
                double weight = Math.exp(-0.5 * Math.pow(k * step / sigmaMm, 2));
                sum = sum.plus(even.points.get(Math.floorMod(i + k, n)).times(weight));
                weights += weight;
            }
            smooth.add(sum.times(1 / weights));
        }
        return new Polyline(smooth, closed);
    }

    /** The arc length to the point of the chain that is nearest to {@code p}; of several, to the first. */
    public double stationOf(Point p) {
        double nearest = Double.POSITIVE_INFINITY;
        int segment = 0;
        double part = 0;
        for (int i = 0; i < segments(); i++) {
            Point along = point(i + 1).minus(point(i));
            double length2 = along.dot(along);
            double t =
                    length2 == 0 ? 0 : Math.max(0, Math.min(1, p.minus(point(i)).dot(along) / length2));
            double distance = p.distance(point(i).towards(point(i + 1), t));
            if (distance < nearest) {
                nearest = distance;
                segment = i;
                part = t;
            }
        }
        double begin = 0;
        for (int i = 0; i < segment; i++) {
            begin += point(i).distance(point(i + 1));
        }
        return begin + part * point(segment).distance(point(segment + 1));
    }

    /**
     * The part of the chain from one arc length to another, in the order of its points. On a closed chain both are
     * reduced modulo its length; where they are the same point the part is the whole chain, cut open there.
     *
     * @return an open chain with both end points and every point of this chain between them
     */
    public Polyline stretch(double fromMm, double toMm) {
        double[] s = stationsMm();
        double total = s[s.length - 1];
        double from = fromMm;
        double to = toMm;
        if (closed) {
            double length = toMm - fromMm - total * Math.floor((toMm - fromMm) / total);
            from = fromMm - total * Math.floor(fromMm / total);
            to = from + (length == 0 ? total : length);
        }
        List<Point> stretch = new ArrayList<>(List.of(at(from, s)));
        for (int i = 0; i < (closed ? 2 : 1) * points.size(); i++) {
            double station = s[i % points.size()] + (i < points.size() ? 0 : total);
            if (station > from + COINCIDENT_MM && station < to - COINCIDENT_MM) {
                stretch.add(point(i));
            }
        }
        stretch.add(at(to, s));
        return open(stretch);
    }

    /** The chain with its points in the opposite order. */
    public Polyline reversed() {
        List<Point> back = new ArrayList<>(points);
        Collections.reverse(back);
        return new Polyline(back, closed);
    }

    /** Transforms every point. */
    public Polyline map(UnaryOperator<Point> transformation) {
        return new Polyline(points.stream().map(transformation).toList(), closed);
    }

    /** The area inside a closed chain by the shoelace formula; positive if the chain runs counter-clockwise. */
    public double signedAreaMm2() {
        double twice = 0;
        for (int i = 0; i < points.size(); i++) {
            twice += points.get(i).cross(points.get((i + 1) % points.size()));
        }
        return twice / 2;
    }

    /** The ordinates at which the chain crosses the vertical line at {@code x}, in ascending order; possibly none. */
    public double[] crossings(double x) {
        double[] ys = new double[segments()];
        int count = 0;
        for (int i = 0; i < segments(); i++) {
            Point a = point(i);
            Point b = point(i + 1);
            // Half-open, so that a point on the line belongs to one of its two segments only.
            if (a.x() <= x != b.x() <= x) {
                ys[count++] = a.towards(b, (x - a.x()) / (b.x() - a.x())).y();
            }
        }
        double[] crossings = Arrays.copyOf(ys, count);
        Arrays.sort(crossings);
        return crossings;
    }

    /** This chain as a JTS line string; that of a closed chain ends at its first point. */
    public LineString lineString() {
        Coordinate[] c = new Coordinate[segments() + 1];
        for (int i = 0; i < c.length; i++) {
            c[i] = point(i).coordinate();
        }
        return JTS.createLineString(c);
    }

    /**
     * The polygon that a closed chain bounds; it is not valid if the chain crosses itself.
     *
     * @throws IllegalStateException if this chain is open
     */
    public Polygon polygon() {
        if (!closed) {
            throw new IllegalStateException("an open chain bounds no area");
        }
        return JTS.createPolygon(lineString().getCoordinates());
    }

    private int segments() {
        return closed ? points.size() : points.size() - 1;
    }

    private Point point(int i) {
        return points.get(i % points.size());
    }
}
