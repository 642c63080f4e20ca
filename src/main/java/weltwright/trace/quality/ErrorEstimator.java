package weltwright.trace.quality;

import java.util.ArrayList;
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
import weltwright.trace.outline.EdgeJump;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;

/**
 * How far the outline may be off: each thing that is not known exactly is moved by one standard deviation, and how far
 * the outline's points move with it, square to the outline and after a rigid motion that undoes what it can, is that
 * thing's share. Shares are independent and add by squares (ISO/IEC Guide 98-3, section 5.1).
 */
public final class ErrorEstimator {
    /** 95 of 100 values of a normal distribution lie within this many standard deviations. */
    private static final double WITHIN_95 = 1.96;

    /** A caliper over a handle that is not quite regular: standard deviation of half the thickness. Common practice. */
    private static final double HEIGHT_SIGMA_MM = 0.15;

    /** How well the thickness that shows at the rim is known, as a part of it. */
    private static final double EXCESS_SIGMA = 0.25;

    /** Blur, shadow and sharpening move a whole stretch of edge alike by up to about this many pixels. */
    private static final double EDGE_SIGMA_PX = 0.25;

    /**
     * The curve is off by this many times the distance from it that 90 of 100 of the points found keep within. It runs
     * between points that err, and points that lie close together err alike, so it errs by more than their scatter
     * shows. By how much is from the photos with known truth, and from what they become when blurred, darkened and made
     * noisy.
     */
    private static final double SCATTER_PART = 1.3;

    private static final double SCATTER_STEP_MM = 0.6;

    /**
     * So much of an outline may lack a clear edge before it strays, and then by so much for all of it: from the photos
     * with known truth.
     */
    private static final double HELD_PART = 0.1;

    private static final double STRAY_MM = 6;

    private static final GeometryFactory JTS = new GeometryFactory();

    private ErrorEstimator() {}

    public static ErrorBudget of(
            ViewSolver.Solution solution,
            TraceableGround ground,
            TraceableGround.HiddenArea hidden,
            SilhouetteBuilder.Built built,
            List<UncertainStretch> unsure,
            DamagedImageArea damaged) {
        double scaleSigma = ground.located().scaleSigma();
        CameraView view = solution.view();
        Plane plane = built.midPlane();
        List<Point> places = built.ring().resampled(4).points().stream()
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
                new ErrorBudget.Part(
                        ErrorSource.Known.THICKNESS_AT_RIM,
                        WITHIN_95
                                * EXCESS_SIGMA
                                * OrderStatistic.quantile(built.excessMm().clone(), 0.95)),
                new ErrorBudget.Part(
                        ErrorSource.Known.EDGE_LOCALIZATION,
                        Math.hypot(WITHIN_95 * EDGE_SIGMA_PX * mmPerPx, SCATTER_PART * scatter90(built))),
                new ErrorBudget.Part(ErrorSource.Known.SHADOW, hidden.shadowMm()),
                new ErrorBudget.Part(
                        ErrorSource.Known.WEAK_EDGE, Math.max(strayed(built.ring(), unsure), uneven(built, unsure))),
                new ErrorBudget.Part(ErrorSource.Known.PARALLEL_LINES, leapt(built))));
        damaged.error().ifPresent(parts::add);
        parts.removeIf(part -> part.error95Mm() == 0);
        parts.sort(Comparator.comparingDouble(ErrorBudget.Part::error95Mm).reversed());
        double squares = 0;
        for (ErrorBudget.Part part : parts) {
            squares += part.error95Mm() * part.error95Mm();
        }
        return new ErrorBudget(Math.sqrt(squares), parts);
    }

    /** How far the outline may be off because the edge was not seen well enough, at 95 %. */
    static double ofEdge(ErrorBudget error) {
        return Math.sqrt(error.parts().stream()
                .filter(part -> part.source() == ErrorSource.Known.EDGE_LOCALIZATION
                        || part.source() == ErrorSource.Known.WEAK_EDGE)
                .mapToDouble(part -> part.error95Mm() * part.error95Mm())
                .sum());
    }

    /** The distance from the outline that 90 of 100 of the points that it was fitted to keep within. */
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

    /** What stretches without a clear edge may stray: nothing while they are few, since both ends hold them. */
    private static double strayed(Polyline ring, List<UncertainStretch> unsure) {
        double length =
                unsure.stream().mapToDouble(u -> u.along(ring).lengthMm()).sum();
        return STRAY_MM * Math.max(0, length / ring.lengthMm() - HELD_PART);
    }

    /**
     * How far the outline winds about its own mean course where no edge shows, at the 95th percentile over all of it:
     * knives are smooth, and there it follows something else. Tip, heel and butt turn sharply by themselves.
     */
    private static double uneven(SilhouetteBuilder.Built built, List<UncertainStretch> unsure) {
        Polyline ring = built.ring();
        IndexedFacetDistance smooth = new IndexedFacetDistance(
                ring.smoothed(EdgeJump.COURSE_MM, SCATTER_STEP_MM).lineString());
        List<Point> points = ring.resampled(SCATTER_STEP_MM).points();
        List<Point> turns = List.of(
                built.silhouette().landmarks().tip(),
                built.silhouette().landmarks().heel(),
                built.silhouette().landmarks().spineStart(),
                built.silhouette().landmarks().butt());
        double[] winds = new double[points.size()];
        int count = 0;
        for (UncertainStretch stretch : unsure) {
            for (Point p : stretch.along(ring).resampled(SCATTER_STEP_MM).points()) {
                boolean turnsItself = turns.stream().anyMatch(t -> t.distance(p) < 2 * EdgeJump.COURSE_MM);
                if (!turnsItself && count < winds.length) {
                    winds[count++] = smooth.distance(JTS.createPoint(p.coordinate()));
                }
            }
        }
        return OrderStatistic.quantile(winds, 0.95);
    }

    /** How far apart the lines are between which the outline leaps, at the 95th percentile over all of it. */
    private static double leapt(SilhouetteBuilder.Built built) {
        double[] heights = IntStream.range(0, built.certainty().length)
                .mapToDouble(i -> built.leaps().stream()
                        .filter(leap -> leap.covers(i))
                        .mapToDouble(EdgeJump::heightMm)
                        .max()
                        .orElse(0))
                .toArray();
        return OrderStatistic.quantile(heights, 0.95);
    }

    /** Of all points, 95 of 100 are off by less than this where each move happens with its own chance. */
    private static double error95(List<Point> places, List<List<Point>> moves) {
        double[] squares = new double[places.size()];
        for (List<Point> moved : moves) {
            double[] off = squareOn(places, moved);
            for (int i = 0; i < squares.length; i++) {
                squares[i] += off[i] * off[i];
            }
        }
        return WITHIN_95 * Math.sqrt(OrderStatistic.quantile(squares, 0.95));
    }

    /** Moves square to the outline, after the rotation and shift of least squares are undone. */
    private static double[] squareOn(List<Point> places, List<Point> moved) {
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
