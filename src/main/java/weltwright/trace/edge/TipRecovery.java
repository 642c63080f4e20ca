package weltwright.trace.edge;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.ColourDistribution;
import weltwright.trace.appearance.ColourStatistics;

/**
 * Recovers a tip that a contour has cut off, though the photo shows it: a region that continues the contour's end, has
 * the knife's colours rather than the ground's, and narrows to a point.
 *
 * <p>Made for a tip that hides too little of the ground's print to be found by that. The steps, on a grid of cells
 * around the end:
 *
 * <ol>
 *   <li>estimate the normal distributions of the knife's colours, inside the end, and of the ground's, beside it;
 *   <li>collect the connected cells ahead of the end whose likelihood ratio (Neyman and Pearson 1933) is the knife's;
 *   <li>where they have the shape of a triangle, add their outermost point to the contour.
 * </ol>
 */
final class TipRecovery {
    /** Half the side of the grid around the end; chosen by eye. */
    private static final double GRID_MM = 10;

    /** Greatest length of a lost tip: the mask does not lose longer ones; chosen by eye. */
    private static final double MOST_MM = 7;

    /** Least length; a shorter tip is recovered from the lines along its sides ({@link TipSharpener}). By eye. */
    private static final double LEAST_MM = 0.7;

    /** Side of a cell: about a pixel of the photo; chosen by eye. */
    private static final double STEP_MM = 0.2;

    /** Distance from the contour within which a cell may belong to either side: the mask's accuracy; by eye. */
    private static final double NEAR_MM = 0.6;

    /** Distance from the end within which the knife's colours are sampled, since they change along a blade; by eye. */
    private static final double SAMPLED_MM = 4;

    /** Half the angle of the cone ahead, from the middle of the sampled knife, in which the tip may lie; by eye. */
    private static final double HALF_CONE_RAD = Math.toRadians(50);

    /** Least variance of a channel averaged over nine pixels, in grey levels squared; chosen by eye. */
    private static final double LEAST_NOISE = 2;

    /** Logarithm of the likelihood ratio above which a colour is the knife's; chosen by eye. */
    private static final double LIKELIER = 1;

    /**
     * Greatest part of the area in the outer half of the length: between the 0.25 of a triangle and the 0.5 of a
     * stripe.
     */
    private static final double MOST_IN_OUTER_HALF = 0.4;

    /** Greatest difference of the area found from that of the triangle added, relative to it; chosen by eye. */
    private static final double MOST_UNLIKE = 0.5;

    /** Least number of cells for the estimate of a distribution; chosen by eye. */
    private static final int FEWEST_SAMPLES = 30;

    private final int size;
    private final double pxPerMm;
    private final double stepPx;
    private final Point corner;
    private final Mat colours;
    private final byte[] inside;
    private final float[] fromContour;
    private final Point end;
    private final Point ahead;
    private final Point from;

    private TipRecovery(DecodedPhoto picture, double pxPerMm, Polyline contour, Point end, Point ahead) {
        this.pxPerMm = pxPerMm;
        stepPx = STEP_MM * pxPerMm;
        size = 2 * (int) Math.round(GRID_MM / STEP_MM) + 1;
        corner = end.minus(new Point(1, 1).times(Math.floorDiv(size, 2) * stepPx));
        this.end = end;
        colours = seen(picture);
        Mat area = area(contour);
        inside = new byte[size * size];
        area.get(0, 0, inside);
        fromContour = fromContour(area);
        area.release();
        this.ahead = ahead;
        from = middleInside();
    }

    /**
     * Returns the contour with the tip that it has cut off at one end, or unchanged where there is none.
     *
     * @param contour closed, in pixels
     * @param end the point of the contour at that end
     * @param other the point at the other end
     */
    static Polyline recover(DecodedPhoto picture, double pxPerMm, Polyline contour, Point end, Point other) {
        TipRecovery tip =
                new TipRecovery(picture, pxPerMm, contour, end, end.minus(other).unit());
        try {
            return tip.recover(contour);
        } finally {
            tip.colours.release();
        }
    }

    private Polyline recover(Polyline contour) {
        double[] knife = new double[ColourStatistics.SIZE];
        double[] ground = new double[ColourStatistics.SIZE];
        float[] bgr = new float[3 * size * size];
        colours.get(0, 0, bgr);
        for (int i = 0; i < size * size; i++) {
            if (fromContour[i] * STEP_MM < NEAR_MM) {
                continue;
            }
            if (isInside(i) && isSampled(i)) {
                ColourStatistics.add(knife, 0, bgr, 3 * i);
            } else if (!isInside(i) && !isAhead(i)) {
                ColourStatistics.add(ground, 0, bgr, 3 * i);
            }
        }
        if (Math.min(knife[0], ground[0]) < FEWEST_SAMPLES) {
            return contour;
        }
        List<Integer> beyond = grow(
                bgr,
                new ColourStatistics(knife).distribution(LEAST_NOISE),
                new ColourStatistics(ground).distribution(LEAST_NOISE));
        return isPoint(beyond) ? withPoint(contour, beyond) : contour;
    }

    /** Returns the connected cells ahead of the end that have the knife's colours. */
    private List<Integer> grow(float[] bgr, ColourDistribution knife, ColourDistribution ground) {
        boolean[] passed = new boolean[size * size];
        Deque<Integer> front = new ArrayDeque<>();
        for (int i = 0; i < size * size; i++) {
            if (isInside(i) && isSampled(i)) {
                passed[i] = true;
                front.add(i);
            }
        }
        List<Integer> beyond = new ArrayList<>();
        while (!front.isEmpty()) {
            int i = front.remove();
            for (int next : new int[] {i - 1, i + 1, i - size, i + size}) {
                if (next < 0 || next >= size * size || passed[next] || !isAhead(next)) {
                    continue;
                }
                passed[next] = true;
                double likelier = knife.logLikelihood(bgr[3 * next], bgr[3 * next + 1], bgr[3 * next + 2])
                        - ground.logLikelihood(bgr[3 * next], bgr[3 * next + 1], bgr[3 * next + 2]);
                if (likelier > LIKELIER) {
                    beyond.add(next);
                    front.add(next);
                }
            }
        }
        return beyond;
    }

    private double reach(List<Integer> beyond) {
        return beyond.stream().mapToDouble(this::reach).max().orElse(0);
    }

    private boolean isPoint(List<Integer> beyond) {
        double reach = reach(beyond);
        long outer = beyond.stream().filter(i -> reach(i) > reach / 2).count();
        long all = beyond.stream().filter(i -> reach(i) > 0).count();
        boolean ends = beyond.stream().allMatch(i -> place(i).distance(end) < (MOST_MM - STEP_MM) * pxPerMm);
        return reach > LEAST_MM && ends && outer < MOST_IN_OUTER_HALF * all;
    }

    /**
     * Returns the contour with the part between the two sides of the tip replaced by the tip's outermost point, or
     * unchanged where the area found differs from the triangle that this adds.
     */
    private Polyline withPoint(Polyline contour, List<Integer> beyond) {
        List<Point> points = contour.points();
        int n = points.size();
        int at = 0;
        for (int i = 1; i < n; i++) {
            at = points.get(i).distance(end) < points.get(at).distance(end) ? i : at;
        }
        int before = 0;
        int after = 0;
        for (int k = 0; k < n / 4; k++) {
            before = touches(points.get(Math.floorMod(at - k, n)), beyond) ? k : before;
            after = touches(points.get((at + k) % n), beyond) ? k : after;
        }
        List<Point> recovered = new ArrayList<>();
        for (int k = after + 1; k < n - before; k++) {
            recovered.add(points.get((at + k) % n));
        }
        recovered.add(apex(beyond));
        Polyline pointed = Polyline.closed(recovered);
        double added = Math.abs(pointed.signedAreaMm2()) - Math.abs(contour.signedAreaMm2());
        double found = beyond.size() * stepPx * stepPx;
        return Math.abs(added - found) < MOST_UNLIKE * found ? pointed : contour;
    }

    private Point apex(List<Integer> beyond) {
        double reach = reach(beyond);
        List<Point> outermost = beyond.stream()
                .filter(i -> reach(i) > reach - STEP_MM)
                .map(this::place)
                .toList();
        return outermost.stream().reduce(new Point(0, 0), Point::plus).times(1.0 / outermost.size());
    }

    private boolean touches(Point p, List<Integer> beyond) {
        return beyond.stream().anyMatch(i -> place(i).distance(p) < 1.5 * stepPx);
    }

    private boolean isInside(int i) {
        return inside[i] != 0;
    }

    private Point place(int i) {
        return corner.plus(new Point(i % size, Math.floorDiv(i, size)).times(stepPx));
    }

    /** Returns how far a cell lies ahead of the end, in mm. */
    private double reach(int i) {
        return place(i).minus(end).dot(ahead) / pxPerMm;
    }

    private boolean isSampled(int i) {
        return place(i).distance(end) < SAMPLED_MM * pxPerMm;
    }

    /** Returns whether a cell lies in the cone in which the tip may be. */
    private boolean isAhead(int i) {
        Point way = place(i).minus(from);
        return way.dot(ahead) > Math.cos(HALF_CONE_RAD) * way.norm() && place(i).distance(end) < MOST_MM * pxPerMm;
    }

    private Point middleInside() {
        Point sum = new Point(0, 0);
        int count = 0;
        for (int i = 0; i < size * size; i++) {
            if (isInside(i) && isSampled(i)) {
                sum = sum.plus(place(i));
                count++;
            }
        }
        return sum.times(1.0 / Math.max(1, count));
    }

    private Mat seen(DecodedPhoto picture) {
        Mat columns = new Mat(size, size, CvType.CV_32F);
        Mat rows = new Mat(size, size, CvType.CV_32F);
        float[] x = new float[size * size];
        float[] y = new float[size * size];
        for (int i = 0; i < size * size; i++) {
            x[i] = (float) place(i).x();
            y[i] = (float) place(i).y();
        }
        columns.put(0, 0, x);
        rows.put(0, 0, y);
        Mat seen = picture.remap(columns, rows, Imgproc.INTER_LINEAR, Core.BORDER_REPLICATE);
        Imgproc.blur(seen, seen, new Size(3, 3));
        seen.convertTo(seen, CvType.CV_32F);
        columns.release();
        rows.release();
        return seen;
    }

    /** Returns a mask of the cells: 255 inside the contour. */
    private Mat area(Polyline contour) {
        MatOfPoint polygon = new MatOfPoint(contour.points().stream()
                .map(p -> p.minus(corner).times(1 / stepPx))
                .map(p -> new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y())))
                .toArray(org.opencv.core.Point[]::new));
        Mat area = Mat.zeros(size, size, CvType.CV_8U);
        Imgproc.fillPoly(area, List.of(polygon), new Scalar(255));
        polygon.release();
        return area;
    }

    /** Returns the distance of each cell from the contour, in cells. */
    private static float[] fromContour(Mat area) {
        Mat distance = new Mat();
        Mat other = new Mat();
        Imgproc.distanceTransform(area, distance, Imgproc.DIST_L2, Imgproc.DIST_MASK_PRECISE);
        Core.bitwise_not(area, area);
        Imgproc.distanceTransform(area, other, Imgproc.DIST_L2, Imgproc.DIST_MASK_PRECISE);
        Core.max(distance, other, distance);
        float[] values = new float[area.rows() * area.cols()];
        distance.get(0, 0, values);
        distance.release();
        other.release();
        return values;
    }
}
