package weltwright.trace.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.camera.rectification.SignedDistanceField;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;

/**
 * Detects the reflection of a ground's lines in a blade with a mirror finish. Ground and blade then look alike, and the
 * edge that was traced may run along a mirrored line.
 *
 * <p>Mirrored lines are as straight and as wide as the ground's own and nearly as dark; their positions and directions
 * differ. The steps:
 *
 * <ol>
 *   <li>rectify the photo, in the mixture of channels in which lines stand out from the ground, and compute the ridge
 *       strength at each pixel by a difference of Gaussians (Marr and Hildreth 1980), which leave out the blade's edge;
 *   <li>take its median on the ground's own lines beside the knife;
 *   <li>find the straight lines of nearly that strength all the way across the blade by the Hough transform (Duda and
 *       Hart 1972), the longest first;
 *   <li>a reflection has enough such lines, and some of them cross.
 * </ol>
 *
 * The edges of other mirrored objects seldom run all the way across the blade. Grinds, grooves and brush marks do, but
 * do not cross.
 */
public final class BladeReflectionDetector {
    /** Resolution of the rectified photo, at which a blurred printed line is two to four pixels wide. */
    private static final double MM_PER_PX = 0.25;

    /** Standard deviation of the inner Gaussian, for lines of 0.25 to 0.5 mm with as much blur; chosen by eye. */
    private static final double LINE_SIGMA_MM = 0.25;

    /** Standard deviation of the outer Gaussian; chosen by eye. */
    private static final double BESIDE_SIGMA_MM = 0.75;

    /** Margin around the blade in which the ground's own lines are measured; chosen by eye. */
    private static final double AROUND_MM = 12;

    /** Distance from the blade's outline within which its own edge disturbs; chosen by eye. */
    private static final double EDGE_MM = 1.6;

    /** Distance from the blade's outline up to which blur spreads the step there; chosen by eye. */
    private static final double BLUR_MM = 1.2;

    /** Distance from the blade within which the ground may lie in its shadow; chosen by eye. */
    private static final double BESIDE_MM = 3;

    /**
     * Least ridge strength of a mirrored line, relative to the ground's; polished steel reflects more than 0.5; chosen
     * by eye.
     */
    private static final double VISIBLE = 0.3;

    /** Least part of a line's length across the blade that must be visible; chosen by eye. */
    private static final double WHOLE = 0.75;

    /** Least length across the blade; chosen by eye. */
    private static final double LEAST_MM = 6;

    /** Half the width of the strip that a line found occupies; chosen by eye. */
    private static final double APART_MM = 1;

    /** Number of directions tried: 1 degree apart, which displaces the ends of a line of 60 mm by 0.3 mm at most. */
    private static final int DIRECTIONS = 180;

    /** Width of a bin of the Hough transform: less than that of a printed line with its blur; chosen by eye. */
    private static final double BIN_MM = 0.35;

    /** Least number of lines; chosen by eye. */
    private static final int LEAST_LINES = 4;

    /** Least number of pixels of so many lines, each as wide as a bin. */
    private static final double LEAST_PIXELS = LEAST_LINES * WHOLE * LEAST_MM * BIN_MM / (MM_PER_PX * MM_PER_PX);

    /** Least angle of crossing lines: the ground's are perpendicular, and in a view from 45 degrees cross at more. */
    private static final double CROSSING = Math.toRadians(60);

    /** Points in arrays, for speed: x and y in mm. */
    private record PointArrays(double[] x, double[] y) {
        static PointArrays of(List<Point> all) {
            return new PointArrays(
                    all.stream().mapToDouble(Point::x).toArray(),
                    all.stream().mapToDouble(Point::y).toArray());
        }

        int count() {
            return x.length;
        }

        PointArrays beside(Line line) {
            int[] left = IntStream.range(0, x.length)
                    .filter(i -> line.off(x[i], y[i]) >= APART_MM)
                    .toArray();
            return new PointArrays(
                    IntStream.of(left).mapToDouble(i -> x[i]).toArray(),
                    IntStream.of(left).mapToDouble(i -> y[i]).toArray());
        }

        /** Returns the number of points in each bin of a direction. */
        int[] counts(Direction direction) {
            int[] counts = new int[direction.bins()];
            double cos = Math.cos(direction.angle());
            double sin = Math.sin(direction.angle());
            for (int i = 0; i < x.length; i++) {
                counts[(int) ((x[i] * cos + y[i] * sin + direction.reach()) / BIN_MM)]++;
            }
            return counts;
        }
    }

    /** A part of a row of the raster that lies well within the blade, in mm; as high as a pixel. */
    private record Run(double y, double fromX, double toX) {
        /** Returns the length of its part between two places, in either order. */
        double lengthMm(double aX, double bX) {
            return Math.max(0, Math.min(toX, Math.max(aX, bX)) - Math.max(fromX, Math.min(aX, bX)));
        }

        /** Returns its parts outside of the strip that a line occupies. */
        Stream<Run> beside(Line line) {
            double cos = Math.cos(line.angle());
            double middle = (line.offMm() - y * Math.sin(line.angle())) / cos;
            double half = APART_MM / Math.abs(cos);
            return Stream.of(
                            new Run(y, fromX, Math.min(toX, middle - half)),
                            new Run(y, Math.max(fromX, middle + half), toX))
                    .filter(run -> run.toX > run.fromX);
        }
    }

    /**
     * The parallel lines across the blade whose normals have one direction.
     *
     * @param angle angle of the normal
     * @param reach distance of the blade's farthest point from the origin, in mm
     */
    private record Direction(double angle, double reach) {
        int bins() {
            return (int) (2 * reach / BIN_MM) + 1;
        }

        /** Returns the line of greatest visible length that is visible all the way; empty where there is none. */
        Optional<Line> longest(List<Run> blade, PointArrays points) {
            int[] places = points.counts(this);
            double leastMm = WHOLE * LEAST_MM;
            @Nullable Line longest = null;
            for (int bin = 0; bin < places.length; bin++) {
                double visibleMm = lengthMm(places[bin]);
                if (visibleMm > leastMm && visibleMm > WHOLE * lengthMm(blade, bin)) {
                    longest = new Line(angle, (bin + 0.5) * BIN_MM - reach, visibleMm);
                    leastMm = visibleMm;
                }
            }
            return Optional.ofNullable(longest);
        }

        private static double lengthMm(int places) {
            return places * MM_PER_PX * MM_PER_PX / BIN_MM;
        }

        /** How much of the blade lies on one of the lines, by its area there. */
        private double lengthMm(List<Run> blade, int bin) {
            double cos = Math.cos(angle);
            double sin = Math.sin(angle);
            double low = bin * BIN_MM - reach;
            double areaMm2 = 0;
            for (Run run : blade) {
                areaMm2 += MM_PER_PX * run.lengthMm((low - run.y() * sin) / cos, (low + BIN_MM - run.y() * sin) / cos);
            }
            return areaMm2 / BIN_MM;
        }
    }

    /**
     * A straight line across the blade in normal form.
     *
     * @param angle angle of its normal
     * @param offMm distance from the origin along the normal
     * @param visibleMm its visible length
     */
    private record Line(double angle, double offMm, double visibleMm) {
        double off(double x, double y) {
            return Math.abs(x * Math.cos(angle) + y * Math.sin(angle) - offMm);
        }

        boolean crosses(Line other) {
            double apart = Math.abs(angle - other.angle);
            return Math.min(apart, Math.PI - apart) > CROSSING;
        }
    }

    private final PlaneRaster raster;

    /** Distance of each pixel from the blade's outline, in mm, positive within. */
    private final float[] depth;

    /** Ridge strength of each pixel, in grey levels. */
    private final float[] ridge;

    private BladeReflectionDetector(
            DecodedPhoto picture, CameraView view, PlaneRaster raster, float[] depth, double[] lineColour) {
        this.raster = raster;
        this.depth = depth;
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        Mat mixture = new Mat(1, 3, CvType.CV_64F);
        mixture.put(0, 0, lineColour);
        Core.normalize(mixture, mixture);
        seen.convertTo(seen, CvType.CV_32F);
        Core.transform(seen, seen, mixture);
        Mat weight = new Mat(seen.size(), CvType.CV_32F);
        weight.put(0, 0, weights(depth));
        Core.multiply(seen, weight, seen);
        Mat ridges = blurred(seen, weight, BESIDE_SIGMA_MM);
        Mat line = blurred(seen, weight, LINE_SIGMA_MM);
        Core.subtract(ridges, line, ridges);
        ridge = new float[(int) ridges.total()];
        ridges.get(0, 0, ridge);
        for (Mat used : List.of(seen, mixture, weight, ridges, line)) {
            used.release();
        }
    }

    /** Returns 0 for pixels next to the blade's edge, whose step is no ridge but many times as strong, else 1. */
    private static float[] weights(float[] depth) {
        float[] weights = new float[depth.length];
        for (int i = 0; i < depth.length; i++) {
            weights[i] = depth[i] > BLUR_MM || depth[i] < -BLUR_MM ? 1 : 0;
        }
        return weights;
    }

    /** Returns the Gaussian mean of weighted pixels (normalized convolution, Knutsson and Westin 1993). */
    private static Mat blurred(Mat weighted, Mat weight, double sigmaMm) {
        Size any = new Size(0, 0);
        Mat sum = new Mat();
        Mat weights = new Mat();
        Imgproc.GaussianBlur(weighted, sum, any, sigmaMm / MM_PER_PX);
        Imgproc.GaussianBlur(weight, weights, any, sigmaMm / MM_PER_PX);
        Core.divide(sum, weights, sum);
        weights.release();
        return sum;
    }

    /**
     * Returns whether the blade mirrors lines of the ground.
     *
     * @param blade its outline projected onto the ground's plane, in mm
     * @param lines straight lines of the ground
     * @param lineColour the colour of the ground minus that of its lines: blue, green, red; zero where there are none
     */
    public static boolean detects(
            DecodedPhoto picture, CameraView view, Polyline blade, List<Polyline> lines, double[] lineColour) {
        if (Arrays.stream(lineColour).allMatch(c -> c == 0)) {
            return false;
        }
        Envelope box = blade.polygon().getEnvelopeInternal();
        PlaneRaster raster = PlaneRaster.covering(
                new Point(box.getMinX() - AROUND_MM, box.getMinY() - AROUND_MM),
                new Point(box.getMaxX() + AROUND_MM, box.getMaxY() + AROUND_MM),
                MM_PER_PX);
        float[] depth = SignedDistanceField.of(blade, raster).mm();
        return new BladeReflectionDetector(picture, view, raster, depth, lineColour).detects(lines);
    }

    private boolean detects(List<Polyline> lines) {
        double typical = typical(lines);
        return typical > 0 && cross(lines(runs(), places(i -> depth[i] > EDGE_MM && ridge[i] > VISIBLE * typical)));
    }

    private static boolean cross(List<Line> lines) {
        return lines.size() >= LEAST_LINES
                && lines.stream().anyMatch(line -> lines.stream().anyMatch(line::crosses));
    }

    /** Returns the median ridge strength on the ground's own lines beside the blade; 0 where there are none. */
    private double typical(List<Polyline> lines) {
        double[] seen = lines.stream()
                .flatMap(line -> line.resampled(2 * MM_PER_PX).points().stream())
                .map(raster::pixel)
                .filter(raster::covers)
                .mapToInt(raster::index)
                .filter(i -> depth[i] < -BESIDE_MM)
                .mapToDouble(i -> ridge[i])
                .toArray();
        return seen.length == 0 ? 0 : OrderStatistic.median(seen);
    }

    private PointArrays places(IntPredicate which) {
        return PointArrays.of(IntStream.range(0, ridge.length)
                .filter(which)
                .mapToObj(i -> raster.pointAt(i % raster.columns(), Math.floorDiv(i, raster.columns())))
                .toList());
    }

    /** Returns the blade without the surroundings of its edge, row by row. */
    private List<Run> runs() {
        List<Run> runs = new ArrayList<>();
        for (int row = 0; row < raster.rows(); row++) {
            int from = 0;
            for (int column = 0; column <= raster.columns(); column++) {
                boolean in = column < raster.columns() && depth[row * raster.columns() + column] > EDGE_MM;
                if (!in && from < column) {
                    Point start = raster.pointAt(from - 0.5, row);
                    runs.add(new Run(
                            start.y(),
                            start.x(),
                            raster.pointAt(column - 0.5, row).x()));
                }
                from = in ? from : column + 1;
            }
        }
        return runs;
    }

    /**
     * Returns the lines, the longest first, until enough of them cross.
     *
     * @param points points of the blade with the ridge strength of a line
     */
    private static List<Line> lines(List<Run> blade, PointArrays points) {
        List<Line> lines = new ArrayList<>();
        if (points.count() < LEAST_PIXELS) {
            return lines;
        }
        double reach = blade.stream()
                .mapToDouble(run -> Math.hypot(Math.max(-run.fromX(), run.toX()), run.y()))
                .max()
                .orElse(0);
        Optional<Line> longest = longest(blade, points, reach);
        while (longest.isPresent() && !cross(lines)) {
            Line line = longest.get();
            lines.add(line);
            blade = blade.stream().flatMap(run -> run.beside(line)).toList();
            points = points.beside(line);
            longest = longest(blade, points, reach);
        }
        return lines;
    }

    private static Optional<Line> longest(List<Run> blade, PointArrays points, double reach) {
        return IntStream.range(0, DIRECTIONS)
                .parallel()
                .mapToObj(t -> new Direction(Math.PI * t / DIRECTIONS, reach).longest(blade, points))
                .flatMap(Optional::stream)
                .reduce((a, b) -> b.visibleMm() > a.visibleMm() ? b : a);
    }
}
