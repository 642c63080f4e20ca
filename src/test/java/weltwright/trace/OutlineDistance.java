package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * How far a traced outline is from the true one: after the best rigid fit (rotation and shift, no scale, no mirror),
 * distances both ways, sampled every 0.5 mm, the butt left out because a thick butt shows its face. Nearest points are
 * found by JTS, the fit by iterating closest points (Besl and McKay 1992) with Umeyama's closed form (1991) and, once
 * near, by Gauss and Newton's method.
 */
final class OutlineDistance {
    private static final double STEP_MM = 0.5;
    private static final double BUTT_MM = 10;

    /** Points this far apart, and so many rounds of closest points, tell which of four starts is the right one. */
    private static final double COARSE_MM = 2;

    private static final int ROUNDS = 60;

    /** From the right start it goes on until a round moves nothing by this. */
    private static final double STILL_MM = 1e-6;

    private static final int MOST_ROUNDS = 200;

    private OutlineDistance() {}

    /** Distances in mm: 95th percentile and greatest, and all of them by place along the true knife. */
    record Reading(double p95Mm, double greatestMm, RigidMotion fit, List<Point> places, double[] distancesMm) {}

    /** @param truth x from the heel (0) to the tip, the butt at its least x */
    static Reading measure(Polyline traced, Polyline truth) {
        OpenCvLibraries.load();
        List<Point> from = traced.resampled(COARSE_MM).points();
        double buttX = truth.points().stream().mapToDouble(Point::x).min().orElseThrow();
        Reading best = null;
        // Traces may be turned either way round; closest points find the nearest of four starts.
        for (int quarter = 0; quarter < 4; quarter++) {
            RigidMotion start = start(from, truth, quarter * Math.PI / 2);
            Reading reading = read(traced, truth, fit(from, truth, start, buttX + BUTT_MM), buttX + BUTT_MM);
            if (best == null || reading.p95Mm() < best.p95Mm()) {
                best = reading;
            }
        }
        RigidMotion fit = refined(traced.resampled(STEP_MM).points(), truth, best.fit(), buttX + BUTT_MM);
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

    private static RigidMotion fit(List<Point> from, Polyline truth, RigidMotion start, double cutX) {
        IndexedFacetDistance index = new IndexedFacetDistance(truth.lineString());
        RigidMotion fit = start;
        double moved = Double.MAX_VALUE;
        for (int i = 0; i < ROUNDS && moved > STILL_MM; i++) {
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
            moved = moved(fit, next, from);
            fit = next;
        }
        return fit;
    }

    /**
     * Goes on by steps of Gauss and Newton on the distances to the closest points: it ends where closest points end,
     * but these slide along a knife for thousands of rounds.
     */
    private static RigidMotion refined(List<Point> from, Polyline truth, RigidMotion start, double cutX) {
        IndexedFacetDistance index = new IndexedFacetDistance(truth.lineString());
        RigidMotion fit = start;
        double moved = Double.MAX_VALUE;
        for (int i = 0; i < MOST_ROUNDS && moved > STILL_MM; i++) {
            Point middle = fit.apply(mean(from));
            double[] squares = new double[9];
            double[] right = new double[3];
            for (Point p : from) {
                Point placed = fit.apply(p);
                Point near = Point.of(index.nearestPoints(point(placed))[0]);
                double distance = placed.distance(near);
                if (near.x() > cutX && distance > 0) {
                    Point towards = near.minus(placed).times(1 / distance);
                    Point arm = placed.minus(middle);
                    double[] by = {arm.cross(towards), towards.x(), towards.y()};
                    for (int j = 0; j < 3; j++) {
                        right[j] += by[j] * distance;
                        for (int k = 0; k < 3; k++) {
                            squares[3 * j + k] += by[j] * by[k];
                        }
                    }
                }
            }
            double[] step = solution(squares, right);
            RigidMotion turn = new RigidMotion(step[0], new Point(0, 0));
            Point shift = new Point(step[1], step[2]);
            RigidMotion next = new RigidMotion(
                    fit.angleRad() + turn.angleRad(),
                    turn.apply(fit.shift().minus(middle)).plus(middle).plus(shift));
            moved = moved(fit, next, from);
            fit = next;
        }
        return fit;
    }

    private static double[] solution(double[] squares, double[] right) {
        Mat a = new Mat(3, 3, CvType.CV_64F);
        Mat b = new Mat(3, 1, CvType.CV_64F);
        a.put(0, 0, squares);
        b.put(0, 0, right);
        Mat solution = new Mat();
        Core.solve(a, b, solution, Core.DECOMP_SVD);
        double[] step = new double[3];
        solution.get(0, 0, step);
        return step;
    }

    private static double moved(RigidMotion fit, RigidMotion next, List<Point> points) {
        Point one = points.get(0);
        Point other = points.get(points.size() / 2);
        return Math.max(
                next.apply(one).distance(fit.apply(one)), next.apply(other).distance(fit.apply(other)));
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
