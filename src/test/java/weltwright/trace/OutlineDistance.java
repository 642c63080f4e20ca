package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;

/**
 * How far a traced outline is from the true one: after the best rigid fit (rotation and shift, no scale, no mirror),
 * distances both ways, sampled every 0.5 mm, the butt left out because a thick butt shows its face. Nearest points are
 * found by JTS, the fit by iterating closest points (Besl and McKay 1992) with Umeyama's closed form (1991).
 */
final class OutlineDistance {
    private static final double STEP_MM = 0.5;
    private static final double BUTT_MM = 10;

    /** Enough rounds of closest points to tell which of four starts is the right one. */
    private static final int ROUNDS = 60;

    /**
     * Closest points slide along a knife slowly: from the right start they go on until a round moves nothing by this.
     */
    private static final double STILL_MM = 1e-6;

    private static final int MOST_ROUNDS = 5000;

    private OutlineDistance() {}

    /** Distances in mm: 95th percentile and greatest, and all of them by place along the true knife. */
    record Reading(double p95Mm, double greatestMm, RigidMotion fit, List<Point> places, double[] distancesMm) {}

    /** @param truth x from the heel (0) to the tip, the butt at its least x */
    static Reading measure(Polyline traced, Polyline truth) {
        List<Point> from = traced.resampled(STEP_MM).points();
        double buttX = truth.points().stream().mapToDouble(Point::x).min().orElseThrow();
        Reading best = null;
        // Traces may be turned either way round; closest points find the nearest of four starts.
        for (int quarter = 0; quarter < 4; quarter++) {
            RigidMotion start = start(from, truth, quarter * Math.PI / 2);
            Reading reading = read(traced, truth, fit(from, truth, start, buttX + BUTT_MM, ROUNDS), buttX + BUTT_MM);
            if (best == null || reading.p95Mm() < best.p95Mm()) {
                best = reading;
            }
        }
        RigidMotion fit = fit(from, truth, best.fit(), buttX + BUTT_MM, MOST_ROUNDS);
        return read(traced, truth, fit, buttX + BUTT_MM);
    }

    private static Reading read(Polyline traced, Polyline truth, RigidMotion fit, double cutX) {
        Polyline placed = traced.map(fit::apply);
        List<Point> places = new ArrayList<>();
        List<Double> distances = new ArrayList<>();
        collect(placed, truth, cutX, places, distances);
        collect(truth, placed, cutX, places, distances);
        double[] all = distances.stream().mapToDouble(Double::doubleValue).toArray();
        double[] sorted = all.clone();
        Arrays.sort(sorted);
        return new Reading(
                sorted[(int) Math.ceil(0.95 * sorted.length) - 1], sorted[sorted.length - 1], fit, places, all);
    }

    private static void collect(Polyline from, Polyline to, double cutX, List<Point> places, List<Double> distances) {
        IndexedFacetDistance index = new IndexedFacetDistance(to.lineString());
        for (Point p : from.resampled(STEP_MM).points()) {
            if (p.x() > cutX) {
                places.add(p);
                distances.add(index.distance(point(p)));
            }
        }
    }

    /** Turned by so much, and moved so that the middles meet. */
    private static RigidMotion start(List<Point> from, Polyline truth, double turn) {
        Point goal = mean(truth.resampled(STEP_MM).points());
        return new RigidMotion(turn, goal.minus(new RigidMotion(turn, new Point(0, 0)).apply(mean(from))));
    }

    private static RigidMotion fit(List<Point> from, Polyline truth, RigidMotion start, double cutX, int rounds) {
        IndexedFacetDistance index = new IndexedFacetDistance(truth.lineString());
        RigidMotion fit = start;
        double moved = Double.MAX_VALUE;
        for (int i = 0; i < rounds && moved > STILL_MM; i++) {
            List<Point> a = new ArrayList<>();
            List<Point> b = new ArrayList<>();
            for (Point p : from) {
                Point placed = fit.apply(p);
                Coordinate near = index.nearestPoints(point(placed))[0];
                if (near.x > cutX) {
                    a.add(p);
                    b.add(Point.of(near));
                }
            }
            RigidMotion next = umeyama(a, b);
            moved = Math.max(
                    next.apply(a.get(0)).distance(fit.apply(a.get(0))),
                    next.apply(a.get(a.size() / 2)).distance(fit.apply(a.get(a.size() / 2))));
            fit = next;
        }
        return fit;
    }

    private static RigidMotion umeyama(List<Point> a, List<Point> b) {
        Point ma = mean(a);
        Point mb = mean(b);
        double dot = 0;
        double cross = 0;
        for (int i = 0; i < a.size(); i++) {
            dot += a.get(i).minus(ma).dot(b.get(i).minus(mb));
            cross += a.get(i).minus(ma).cross(b.get(i).minus(mb));
        }
        double angle = Math.atan2(cross, dot);
        return new RigidMotion(angle, mb.minus(new RigidMotion(angle, new Point(0, 0)).apply(ma)));
    }

    private static Point mean(List<Point> points) {
        return new Point(
                points.stream().mapToDouble(Point::x).average().orElseThrow(),
                points.stream().mapToDouble(Point::y).average().orElseThrow());
    }

    private static org.locationtech.jts.geom.Point point(Point p) {
        return new org.locationtech.jts.geom.GeometryFactory().createPoint(p.coordinate());
    }
}
