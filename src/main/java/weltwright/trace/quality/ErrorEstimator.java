package weltwright.trace.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;

/**
 * Estimates the error of an outline at 95 %. Each uncertain quantity is changed by one standard deviation; its share is
 * the displacement of the outline's points along its normals, after the rigid motion of least squares is removed.
 * Shares are independent and add by squares (ISO/IEC Guide 98-3, section 5.1).
 */
public final class ErrorEstimator {
    /** Half the width of the 95 % interval of a normal distribution, in standard deviations. */
    private static final double WITHIN_95 = 1.96;

    /** Standard deviation of half a handle's thickness by caliper, for one that is not regular. Common practice. */
    private static final double HEIGHT_SIGMA_MM = 0.15;

    /** Relative standard deviation of the displacement by thickness at the outline; chosen by eye. */
    private static final double EXCESS_SIGMA = 0.25;

    /** Standard deviation of a stretch of edge as a whole, by blur, shadow and sharpening; chosen by eye. */
    private static final double EDGE_SIGMA_PX = 0.25;

    /**
     * Error of the curve in units of the distance from it within which 90 % of the edge points lie. The errors of
     * nearby points are correlated, so the curve errs by more than their scatter. Fitted to photos with known truth, as
     * they are and blurred, darkened and made noisy ({@code TraceRobustnessReport}).
     */
    private static final double SCATTER_PART = 1.3;

    /** Distance of the points compared; chosen by eye. */
    private static final double SCATTER_STEP_MM = 0.6;

    /** Part of an outline that may drift without a greater error at 95 %. */
    private static final double LEFT_OUT_PART = 0.05;

    /** Drift of an outline that is weak all around; fitted to the photos with known truth. */
    private static final double DRIFT_MM = 4;

    /** Distance of the outline's points that are displaced; chosen by eye. */
    private static final double POINT_MM = 4;

    private static final GeometryFactory JTS = new GeometryFactory();

    private ErrorEstimator() {}

    /**
     * Estimates the error of a silhouette.
     *
     * @param solution camera and pose with their uncertainty
     * @param unsure weak stretches of the outline
     * @param damaged damaged part of the photo
     */
    public static ErrorBudget estimate(
            ViewSolver.Solution solution,
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SilhouetteBuilder.Built built,
            List<UncertainStretch> unsure,
            DamagedImageArea damaged) {
        double scaleSigma = ground.located().scaleSigma();
        CameraView view = solution.view();
        Plane plane = built.midPlane();
        List<Point> places = built.ring().resampled(POINT_MM).points().stream()
                .map(built.onGround()::apply)
                .toList();
        List<Point> pixels =
                places.stream().map(p -> view.pixel(plane.pointAbove(p))).toList();
        List<CameraView> off = solution.sigmaViews();
        List<List<Point>> pose = new ArrayList<>();
        for (CameraView moved : off.subList(1, off.size())) {
            pose.add(pixels.stream().map(px -> moved.intersection(px, plane)).toList());
        }
        List<Point> focal =
                pixels.stream().map(px -> off.get(0).intersection(px, plane)).toList();
        Plane higher = new Plane(plane.heightMm() + HEIGHT_SIGMA_MM, plane.slope());
        List<Point> height =
                pixels.stream().map(px -> view.intersection(px, higher)).toList();
        UnaryOperator<Point> wider = p -> new Point(p.x() * (1 + scaleSigma), p.y());
        UnaryOperator<Point> longer = p -> new Point(p.x(), p.y() * (1 + scaleSigma));
        List<List<Point>> scale = List.of(
                places.stream().map(wider).toList(), places.stream().map(longer).toList());
        double mmPerPx = 1
                / view.pixel(plane.pointAbove(places.get(0)))
                        .distance(view.pixel(plane.pointAbove(places.get(0).plus(new Point(1, 0)))));

        List<ErrorBudget.Part> parts = new ArrayList<>(List.of(
                new ErrorBudget.Part(ErrorSource.Known.REFERENCE_POINTS, error95(places, pose)),
                new ErrorBudget.Part(ErrorSource.Known.FOCAL_LENGTH, error95(places, List.of(focal))),
                new ErrorBudget.Part(ErrorSource.Known.HANDLE_THICKNESS, error95(places, List.of(height))),
                new ErrorBudget.Part(ErrorSource.Known.GROUND_SCALE, error95(places, scale)),
                new ErrorBudget.Part(ErrorSource.Known.THICKNESS_AT_RIM, thicknessError95(built)),
                new ErrorBudget.Part(
                        ErrorSource.Known.EDGE_LOCALIZATION,
                        Math.hypot(WITHIN_95 * EDGE_SIGMA_PX * mmPerPx, SCATTER_PART * scatter90(built))),
                new ErrorBudget.Part(ErrorSource.Known.SHADOW, hidden.shadowMm()),
                new ErrorBudget.Part(ErrorSource.Known.WEAK_EDGE, driftMm(built.ring(), unsure))));
        damaged.error().ifPresent(parts::add);
        parts.removeIf(part -> part.error95Mm() == 0);
        parts.sort(Comparator.comparingDouble(ErrorBudget.Part::error95Mm).reversed());
        double squares = 0;
        for (ErrorBudget.Part part : parts) {
            squares += part.error95Mm() * part.error95Mm();
        }
        return new ErrorBudget(Math.sqrt(squares), parts);
    }

    /** Returns the part of an error that is due to how well the edge was located, at 95 %. */
    static double ofEdge(ErrorBudget error) {
        return Math.sqrt(error.parts().stream()
                .filter(part -> part.source() == ErrorSource.Known.EDGE_LOCALIZATION
                        || part.source() == ErrorSource.Known.WEAK_EDGE)
                .mapToDouble(part -> part.error95Mm() * part.error95Mm())
                .sum());
    }

    /** Returns the distance from the outline within which 90 % of the edge points lie. */
    private static double scatter90(SilhouetteBuilder.Built built) {
        IndexedFacetDistance outline = new IndexedFacetDistance(
                built.silhouette().outline().sampled(SCATTER_STEP_MM / 2).lineString());
        List<Point> points = built.ring().points();
        int every = (int) Math.max(
                1, Math.round(SCATTER_STEP_MM * points.size() / built.ring().lengthMm()));
        double[] off = IntStream.range(0, points.size() / every)
                .mapToDouble(i ->
                        outline.distance(JTS.createPoint(points.get(every * i).coordinate())))
                .toArray();
        return OrderStatistic.quantile(off, 0.90);
    }

    /** Returns the drift of weak stretches, which grows with their length: both ends hold them. */
    private static double driftMm(Polyline ring, List<UncertainStretch> unsure) {
        double length =
                unsure.stream().mapToDouble(u -> u.along(ring).lengthMm()).sum();
        return DRIFT_MM * Math.max(0, length / ring.lengthMm() - LEFT_OUT_PART);
    }

    /**
     * Returns the distance within which 95 of 100 points lie whose errors are normal, each of a variance of its own. It
     * is taken to be that of one normal distribution of the mean variance, which mixtures of normal distributions
     * hardly depart from at this percentage: the double exponential, which is one, by a twelfth.
     */
    private static double error95(double[] variances) {
        return WITHIN_95 * Math.sqrt(Arrays.stream(variances).average().orElse(0));
    }

    /** Returns the error at 95 % by the displacements by thickness that were subtracted. */
    private static double thicknessError95(SilhouetteBuilder.Built built) {
        double[] variances = new double[built.excessMm().length];
        Arrays.setAll(
                variances,
                i -> Math.pow(EXCESS_SIGMA * built.excessMm()[i], 2) + Math.pow(built.sectionSigmaMm()[i], 2));
        return error95(variances);
    }

    /** Returns the error at 95 % of independent displacements by one standard deviation each. */
    private static double error95(List<Point> places, List<List<Point>> moves) {
        double[] variances = new double[places.size()];
        for (List<Point> moved : moves) {
            double[] off = normalDisplacements(places, moved);
            for (int i = 0; i < variances.length; i++) {
                variances[i] += off[i] * off[i];
            }
        }
        return error95(variances);
    }

    /** Returns the displacements along the normals, after the rotation and shift of least squares are removed. */
    private static double[] normalDisplacements(List<Point> places, List<Point> moved) {
        int n = places.size();
        Point middle = mean(places);
        Point shift = mean(moved).minus(middle);
        double turn = 0;
        double inertia = 0;
        for (int i = 0; i < n; i++) {
            Point arm = places.get(i).minus(middle);
            turn += arm.cross(moved.get(i).minus(places.get(i)).minus(shift));
            inertia += arm.dot(arm);
        }
        double[] off = new double[n];
        for (int i = 0; i < n; i++) {
            Point arm = places.get(i).minus(middle);
            Point left = moved.get(i)
                    .minus(places.get(i))
                    .minus(shift)
                    .minus(arm.left().times(turn / inertia));
            Point along =
                    places.get((i + 1) % n).minus(places.get((i - 1 + n) % n)).unit();
            off[i] = along.cross(left);
        }
        return off;
    }

    private static Point mean(List<Point> points) {
        return Polyline.closed(points).points().stream()
                .reduce(new Point(0, 0), Point::plus)
                .times(1.0 / points.size());
    }
}
