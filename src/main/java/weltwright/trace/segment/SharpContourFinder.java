package weltwright.trace.segment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfInt;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.opencv.OpenCvPoints;

/**
 * Finds the rough outline of a knife on a ground without print by the sharpness of its edges. A soft shadow is not
 * sharp; a hard one is. Where steel is as bright as the paper the edge may be missing for a stretch.
 *
 * <p>The steps:
 *
 * <ol>
 *   <li>find the largest group of sharp edges;
 *   <li>draw the line midway between its outermost edges, which lies within the knife;
 *   <li>take the closed path around that line that is sharpest ({@link MinimumCostLoop}).
 * </ol>
 *
 * <p>Assumes that the knife is solid midway between its outermost edges, as all but strongly curved ones are.
 */
public final class SharpContourFinder {
    /** Least sharpness of an edge, in units of grain; chosen by eye. */
    private static final double EDGE = 3.3;

    /** Least length of an edge: shorter runs occur in grain; chosen by eye. */
    private static final double EDGE_MM = 5;

    /** Edges nearer to each other than twice this belong to one object; chosen by eye. */
    private static final double TOGETHER_MM = 4;

    /** Least number of edge pixels of a knife, at 0.4 mm to the pixel; chosen by eye, far below that of any knife. */
    private static final int FEWEST_PIXELS = 300;

    /** Distance of the middle line from the knife's ends; chosen by eye. */
    private static final double FROM_END_MM = 5;

    /** Distance of stations along the middle line; chosen by eye. */
    private static final double STATION_MM = 2;

    /** Stations to either side of the running median that discards pins and patterns of a handle; chosen by eye. */
    private static final int MEDIAN_STATIONS = 3;

    /** Distance from the edges' convex hull within which the path keeps; chosen by eye. */
    private static final double ROOM_MM = 8;

    /** Sharpness, in units of grain, at which a step costs half of what it costs on plain ground; chosen by eye. */
    private static final double HALF_COST = 3;

    /** Least cost of a step, which keeps the path from winding along clear edges; chosen by eye. */
    private static final double LEAST_COST = 0.01;

    /** Number of places, the sharpest ones, that are tried as the path's crossing of the cut; chosen by eye. */
    private static final int CROSSINGS_TRIED = 6;

    /** Least sharpness, in units of grain, of a second line, such as a hard shadow's edge; chosen by eye. */
    private static final double SECOND_LINE = 6;

    /** Least length of a second line outside of the path, as a part of the path's; chosen by eye. */
    private static final double OUTER_PART = 0.15;

    /** The same inside: more, since a grind line runs along the blade, a shadow's edge along a whole side; by eye. */
    private static final double INNER_PART = 0.35;

    /** Least distance of a second line from the path, beyond the blur of the first; chosen by eye. */
    private static final double BLUR_MM = 1.6;

    /** Width of a sharp line in the map, by which its pixels are converted to a length; chosen by eye. */
    private static final double LINE_MM = 1.4;

    /** Greatest distance of a second line inside the path; chosen by eye. */
    private static final double BESIDE_MM = 9;

    private final SharpnessMap sharpness;
    private final PlaneRaster raster;

    public SharpContourFinder(SharpnessMap sharpness) {
        this.sharpness = sharpness;
        this.raster = sharpness.raster();
    }

    /**
     * A contour.
     *
     * @param contour closed and counter-clockwise, on the ground's plane, in mm
     * @param hasSecondLine whether another line beside it is so sharp that it might be the knife's edge instead
     */
    public record Found(Polyline contour, boolean hasSecondLine) {}

    /**
     * Finds the contour; empty where the object goes on beyond the raster.
     *
     * @throws weltwright.error.UserFacingException where there is no knife
     */
    public Optional<Found> find() {
        List<Point> edges = largestGroup();
        if (edges.stream().anyMatch(this::isAtBorder)) {
            return Optional.empty();
        }
        List<Point> middle = middle(edges);
        Polyline path = path(edges, middle);
        Polyline contour = path.map(p -> raster.pointAt(p.x(), p.y()));
        return Optional.of(
                new Found(contour.signedAreaMm2() > 0 ? contour : contour.reversed(), hasSecondLine(edges, path)));
    }

    private boolean isAtBorder(Point px) {
        return Math.min(px.x(), px.y()) < 2 || px.x() > raster.columns() - 3 || px.y() > raster.rows() - 3;
    }

    /** Returns the edge pixels of the largest object. */
    private List<Point> largestGroup() {
        byte[] sharp = new byte[sharpness.values().length];
        for (int i = 0; i < sharp.length; i++) {
            sharp[i] = (byte) (sharpness.values()[i] > EDGE ? 255 : 0);
        }
        Mat edges = new Mat(raster.rows(), raster.columns(), CvType.CV_8U);
        edges.put(0, 0, sharp);
        dropShort(edges);
        edges.get(0, 0, sharp);
        Mat grown = new Mat();
        Mat together = disc(TOGETHER_MM);
        Imgproc.dilate(edges, grown, together);
        Mat labels = new Mat();
        int count = Imgproc.connectedComponents(grown, labels);
        int[] label = new int[sharp.length];
        labels.get(0, 0, label);
        for (Mat used : List.of(edges, grown, together, labels)) {
            used.release();
        }
        int[] size = new int[count];
        for (int i = 0; i < sharp.length; i++) {
            size[label[i]] += sharp[i] != 0 ? 1 : 0;
        }
        int largest = IntStream.range(1, count).reduce(0, (a, b) -> size[b] > size[a] ? b : a);
        if (size[largest] < FEWEST_PIXELS) {
            throw KnifeMask.noKnife();
        }
        return IntStream.range(0, sharp.length)
                .filter(i -> sharp[i] != 0 && label[i] == largest)
                .mapToObj(i -> new Point(i % raster.columns(), Math.floorDiv(i, raster.columns())))
                .toList();
    }

    /** Removes edges shorter than {@link #EDGE_MM}. */
    private void dropShort(Mat edges) {
        Mat labels = new Mat();
        Mat boxes = new Mat();
        Mat centres = new Mat();
        int count = Imgproc.connectedComponentsWithStats(edges, labels, boxes, centres);
        boolean[] isLong = new boolean[count];
        for (int l = 1; l < count; l++) {
            double width = boxes.get(l, Imgproc.CC_STAT_WIDTH)[0];
            double height = boxes.get(l, Imgproc.CC_STAT_HEIGHT)[0];
            isLong[l] = Math.hypot(width, height) * raster.mmPerPx() >= EDGE_MM;
        }
        int[] label = new int[edges.cols() * edges.rows()];
        labels.get(0, 0, label);
        byte[] kept = new byte[label.length];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = (byte) (isLong[label[i]] ? 255 : 0);
        }
        edges.put(0, 0, kept);
        for (Mat used : List.of(labels, boxes, centres)) {
            used.release();
        }
    }

    /** Returns the line midway between the outermost edges, from one end of the object to the other, in pixels. */
    private List<Point> middle(List<Point> edges) {
        List<Point> corners =
                hull(edges).toList().stream().map(p -> new Point(p.x, p.y)).toList();
        Point start = corners.get(0);
        Point end = start;
        for (Point a : corners) {
            for (Point b : corners) {
                if (a.distance(b) > start.distance(end)) {
                    start = a;
                    end = b;
                }
            }
        }
        Point along = end.minus(start).unit();
        double step = STATION_MM / raster.mmPerPx();
        int stations = (int) Math.ceil(start.distance(end) / step) + 1;
        double[] low = new double[stations];
        double[] high = new double[stations];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (Point p : edges) {
            Point off = p.minus(start);
            int station = (int) Math.max(0, Math.min(stations - 1, Math.round(off.dot(along) / step)));
            low[station] = Math.min(low[station], along.cross(off));
            high[station] = Math.max(high[station], along.cross(off));
        }
        List<Point> middle = new ArrayList<>();
        int atEnd = (int) Math.ceil(FROM_END_MM / STATION_MM);
        for (int s = atEnd; s < stations - atEnd; s++) {
            double[] near = IntStream.rangeClosed(s - MEDIAN_STATIONS, s + MEDIAN_STATIONS)
                    .filter(k -> k >= 0 && k < stations && high[k] >= low[k])
                    .mapToDouble(k -> (high[k] + low[k]) / 2)
                    .toArray();
            if (near.length > 0) {
                middle.add(start.plus(along.times(s * step)).plus(along.left().times(OrderStatistic.median(near))));
            }
        }
        if (middle.size() < 2 * MEDIAN_STATIONS) {
            throw KnifeMask.noKnife();
        }
        return middle;
    }

    /** Returns the cheapest closed path around the middle line, in pixels. */
    private Polyline path(List<Point> edges, List<Point> middle) {
        Point along = middle.get(middle.size() - 1).minus(middle.get(0));
        // The cut runs up from the knife; for an upright knife the raster is transposed.
        boolean upright = Math.abs(along.y()) > Math.abs(along.x());
        Point from = middle.get(middle.size() / 2);
        int columns = upright ? raster.rows() : raster.columns();
        int cutColumn = (int) Math.round(upright ? from.y() : from.x());
        int cutRow = (int) Math.round(upright ? from.x() : from.y());
        float[] cost = cost(edges, middle);
        float[] laid = upright ? transposed(cost) : cost;
        MinimumCostLoop round = new MinimumCostLoop(laid, columns, cutColumn, cutRow);
        int[] rows = crossings(laid, columns, cutColumn, cutRow);
        // The sharpest crossing is mostly the best, and its cost then bounds the search through the others.
        MinimumCostLoop.Path first =
                rows.length == 0 ? MinimumCostLoop.NONE : round.through(rows[0], MinimumCostLoop.NONE.cost());
        MinimumCostLoop.Path best = Arrays.stream(rows)
                .skip(1)
                .parallel()
                .mapToObj(row -> round.through(row, first.cost()))
                .reduce(first, (a, b) -> b.cost() < a.cost() ? b : a);
        if (best.pixels().length == 0) {
            throw KnifeMask.noKnife();
        }
        List<Point> places = new ArrayList<>();
        for (int pixel : best.pixels()) {
            Point at = new Point(pixel % columns, Math.floorDiv(pixel, columns));
            places.add(upright ? new Point(at.y(), at.x()) : at);
        }
        return Polyline.closed(places);
    }

    private float[] cost(List<Point> edges, List<Point> middle) {
        Mat open = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        MatOfPoint hull = hull(edges);
        Imgproc.fillConvexPoly(open, hull, new Scalar(255));
        Mat room = disc(ROOM_MM);
        Imgproc.dilate(open, open, room);
        // Three pixels wide, so that no path passes between two of its pixels.
        MatOfPoint line = OpenCvPoints.rounded(middle);
        Imgproc.polylines(open, List.of(line), false, new Scalar(0), 3);
        byte[] mayGo = new byte[sharpness.values().length];
        open.get(0, 0, mayGo);
        for (Mat used : List.of(open, hull, room, line)) {
            used.release();
        }
        float[] cost = new float[mayGo.length];
        for (int i = 0; i < cost.length; i++) {
            double edge = sharpness.values()[i] / HALF_COST;
            cost[i] = (float) (mayGo[i] == 0 ? Double.POSITIVE_INFINITY : LEAST_COST + 1 / (1 + edge * edge));
        }
        return cost;
    }

    private float[] transposed(float[] of) {
        float[] transposed = new float[of.length];
        for (int y = 0; y < raster.rows(); y++) {
            for (int x = 0; x < raster.columns(); x++) {
                transposed[x * raster.rows() + y] = of[y * raster.columns() + x];
            }
        }
        return transposed;
    }

    /** Returns the rows at which a path may cross the cut: the sharpest local maxima on it. */
    private static int[] crossings(float[] cost, int columns, int cutColumn, int cutRow) {
        return IntStream.range(1, cutRow - 1)
                .filter(y -> cost[y * columns + cutColumn] < 1
                        && cost[y * columns + cutColumn] <= cost[(y - 1) * columns + cutColumn]
                        && cost[y * columns + cutColumn] < cost[(y + 1) * columns + cutColumn])
                .boxed()
                .sorted(Comparator.comparingDouble(y -> cost[y * columns + cutColumn]))
                .limit(CROSSINGS_TRIED)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private boolean hasSecondLine(List<Point> edges, Polyline path) {
        Mat inside = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        MatOfPoint area = OpenCvPoints.rounded(path.points());
        Imgproc.fillPoly(inside, List.of(area), new Scalar(255));
        area.release();
        byte[] beyond = changed(inside, Imgproc.MORPH_DILATE, BLUR_MM);
        byte[] within = changed(inside, Imgproc.MORPH_ERODE, BLUR_MM);
        byte[] deep = changed(inside, Imgproc.MORPH_ERODE, BESIDE_MM);
        inside.release();
        int outer = 0;
        int inner = 0;
        for (Point p : edges) {
            int i = ((int) p.y()) * raster.columns() + ((int) p.x());
            if (sharpness.values()[i] > SECOND_LINE) {
                outer += beyond[i] == 0 ? 1 : 0;
                inner += within[i] != 0 && deep[i] == 0 ? 1 : 0;
            }
        }
        double lineLengthPx = raster.mmPerPx() / LINE_MM;
        return outer * lineLengthPx > OUTER_PART * path.lengthMm()
                || inner * lineLengthPx > INNER_PART * path.lengthMm();
    }

    private byte[] changed(Mat mask, int operation, double radiusMm) {
        Mat changed = new Mat();
        Mat disc = disc(radiusMm);
        Imgproc.morphologyEx(mask, changed, operation, disc);
        byte[] pixels = new byte[raster.columns() * raster.rows()];
        changed.get(0, 0, pixels);
        changed.release();
        disc.release();
        return pixels;
    }

    private static MatOfPoint hull(List<Point> of) {
        MatOfPoint points = OpenCvPoints.rounded(of);
        MatOfInt indices = new MatOfInt();
        Imgproc.convexHull(points, indices);
        List<org.opencv.core.Point> all = points.toList();
        MatOfPoint hull = new MatOfPoint(indices.toList().stream().map(all::get).toArray(org.opencv.core.Point[]::new));
        points.release();
        indices.release();
        return hull;
    }

    private Mat disc(double radiusMm) {
        int r = (int) Math.ceil(radiusMm / raster.mmPerPx());
        return Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(2 * r + 1, 2 * r + 1));
    }
}
