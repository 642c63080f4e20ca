package weltwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * A chain of straight segments, open or closed, that is walked by arc length. Curves come here sampled finely enough
 * for their purpose (a chord of a curve of radius r and length c lies within c²/8r of it).
 *
 * <p>A closed chain names its first point once: the segment from the last point back to the first is implied.
 *
 * @param points at least two, or three where closed; in mm
 * @param closed whether the last point joins the first
 */
public record Polyline(List<Point> points, boolean closed) {
    private static final GeometryFactory JTS = new GeometryFactory();

    public Polyline {
        points = List.copyOf(points);
        if (points.size() < (closed ? 3 : 2)) {
            throw new IllegalArgumentException("a chain of " + points.size() + " points");
        }
    }

    /** A chain from the first point to the last; two at least. */
    public static Polyline open(List<Point> points) {
        return new Polyline(points, false);
    }

    /** A chain that runs from the last point back to the first, which is not repeated; three at least. */
    public static Polyline closed(List<Point> points) {
        return new Polyline(points, true);
    }

    /** The boundary of a JTS polygon's shell. */
    public static Polyline shell(Polygon polygon) {
        Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
        return closed(Arrays.stream(ring, 0, ring.length - 1).map(Point::of).toList());
    }

    /** From end to end along the chain, or once round it. */
    public double lengthMm() {
        double sum = 0;
        for (int i = 0; i < segments(); i++) {
            sum += point(i).distance(point(i + 1));
        }
        return sum;
    }

    /** Arc length from the first point to each point in turn; a closed chain has one entry more, its whole length. */
    public double[] stationsMm() {
        double[] s = new double[segments() + 1];
        for (int i = 0; i < segments(); i++) {
            s[i + 1] = s[i] + point(i).distance(point(i + 1));
        }
        return s;
    }

    /**
     * The point at arc length {@code sMm} from the first point: clamped to the ends of an open chain, taken round and
     * round a closed one.
     */
    public Point at(double sMm) {
        double[] s = stationsMm();
        return at(sMm, s);
    }

    /** Points at each of the arc lengths given, as {@link #at}. */
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
     * The stretch from one arc length to another, as an open chain with all points between. On a closed chain the
     * second may be the lesser: the stretch then runs through the first point.
     */
    public Polyline part(double fromMm, double toMm) {
        double[] s = stationsMm();
        double total = s[s.length - 1];
        double to = closed && toMm <= fromMm ? toMm + total : toMm;
        List<Point> part = new ArrayList<>(List.of(at(fromMm, s)));
        for (int lap = 0; lap * total < to; lap++) {
            for (int i = 0; i < s.length - 1; i++) {
                double station = s[i] + lap * total;
                if (station > fromMm && station < to) {
                    part.add(points.get(i));
                }
            }
        }
        part.add(at(to, s));
        return open(part);
    }

    /** Points at equal arc lengths, as near to {@code stepMm} apart as a whole number of steps allows. */
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
     * The chain resampled and smoothed: each point the Gaussian mean of its neighbours along the arc. It cuts corners
     * and shrinks bulges narrower than about {@code sigmaMm}. Towards the ends of an open chain fewer neighbours are
     * taken, the same number on either side; the ends stay.
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

    /** The length along the chain to that of its points which is nearest to {@code p}. */
    public double stationOf(Point p) {
        double[] s = stationsMm();
        double nearest = Double.POSITIVE_INFINITY;
        double station = 0;
        for (int i = 0; i < segments(); i++) {
            Point along = point(i + 1).minus(point(i));
            double length2 = along.dot(along);
            double t =
                    length2 == 0 ? 0 : Math.max(0, Math.min(1, p.minus(point(i)).dot(along) / length2));
            double distance = p.distance(point(i).towards(point(i + 1), t));
            if (distance < nearest) {
                nearest = distance;
                station = s[i] + t * (s[i + 1] - s[i]);
            }
        }
        return station;
    }

    /**
     * The stretch of a closed chain from one arc length on to another, past the first point where need be: all the way
     * round where they are the same.
     */
    public Polyline stretch(double fromMm, double toMm) {
        double[] s = stationsMm();
        double total = s[s.length - 1];
        double from = fromMm - total * Math.floor(fromMm / total);
        double length = toMm - fromMm - total * Math.floor((toMm - fromMm) / total);
        double to = from + (length == 0 ? total : length);
        List<Point> stretch = new ArrayList<>(List.of(at(from, s)));
        for (int i = 0; i < 2 * points.size(); i++) {
            double station = s[i % points.size()] + (i < points.size() ? 0 : total);
            if (station > from + 1e-9 && station < to - 1e-9) {
                stretch.add(point(i));
            }
        }
        stretch.add(at(to, s));
        return open(stretch);
    }

    /** Run through the other way, from the last point to the first. */
    public Polyline reversed() {
        List<Point> back = new ArrayList<>(points);
        Collections.reverse(back);
        return new Polyline(back, closed);
    }

    /** The same chain with every point moved. */
    public Polyline map(java.util.function.UnaryOperator<Point> motion) {
        return new Polyline(points.stream().map(motion).toList(), closed);
    }

    /** Twice counted by the shoelace formula and halved; positive where a closed chain runs counter-clockwise. */
    public double signedAreaMm2() {
        double twice = 0;
        for (int i = 0; i < points.size(); i++) {
            twice += points.get(i).cross(points.get((i + 1) % points.size()));
        }
        return twice / 2;
    }

    /** The y at which the chain crosses an upright line, rising; empty where it does not. */
    public double[] crossings(double x) {
        double[] ys = new double[segments()];
        int count = 0;
        for (int i = 0; i < segments(); i++) {
            Point a = point(i);
            Point b = point(i + 1);
            // Half open, so that a point on the line counts for one of its two segments only.
            if (a.x() <= x != b.x() <= x) {
                ys[count++] = a.towards(b, (x - a.x()) / (b.x() - a.x())).y();
            }
        }
        double[] crossings = Arrays.copyOf(ys, count);
        Arrays.sort(crossings);
        return crossings;
    }

    /** The same for JTS; a closed one ends where it began. */
    public LineString lineString() {
        Coordinate[] c = new Coordinate[segments() + 1];
        for (int i = 0; i < c.length; i++) {
            c[i] = point(i).coordinate();
        }
        return JTS.createLineString(c);
    }

    /** The area inside a closed chain. */
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
