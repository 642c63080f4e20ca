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

/**
 * A point of a knife that a contour has cut off, though the picture shows it: what goes on before the contour's end,
 * has the knife's colours rather than the ground's, and narrows to a point.
 *
 * <p>Made for a tip that hides too little of the ground's print to be told by that. The colours are two normal
 * distributions: the knife's, learned inside the end, and the ground's, learned beside it; what lies before the end is
 * learned from by neither. A colour is the knife's where it is likelier so, by the ratio of likelihoods (Neyman and
 * Pearson 1933).
 */
final class TipRecovery {
    /** So far round the end the picture is looked at. */
    private static final double ROUND_MM = 10;

    /** What goes on so far from the end is no tip: a longer one would not have been lost. */
    private static final double MOST_MM = 7;

    /** A shorter one is given back by the lines along its sides ({@link TipSharpener}). */
    private static final double LEAST_MM = 0.7;

    private static final double STEP_MM = 0.2;

    /** Nearer to the contour than this a place may be on its other side. */
    private static final double NEAR_MM = 0.6;

    /** The knife's colours are learned no farther from the end than this, since they change along a blade. */
    private static final double LEARNED_MM = 4;

    /** The cone ahead, from the middle of what is learned from, in which the point may lie, to each side. */
    private static final double HALF_CONE_RAD = Math.toRadians(50);

    /** Variance of a channel's noise that is always there where nine pixels are averaged, in grey levels squared. */
    private static final double LEAST_NOISE = 2;

    /** A colour is the knife's where the logarithm of the likelihoods' ratio is more than this. */
    private static final double LIKELIER = 1;

    /** A triangle has a quarter of its area in the outer half of its height, a stripe has half. */
    private static final double MOST_IN_OUTER_HALF = 0.4;

    /** What was found may differ so much in area from the triangle which it is taken for, as a part of its own. */
    private static final double MOST_UNLIKE = 0.5;

    private static final int FEWEST_TO_LEARN_FROM = 30;

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
        size = 2 * (int) Math.round(ROUND_MM / STEP_MM) + 1;
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
     * The contour with the point that it has cut off at one end, or as it is where there is none.
     *
     * @param contour closed, in pixels
     * @param end the place of the contour that is the end
     * @param other the end on the other side
     */
    static Polyline regained(DecodedPhoto picture, double pxPerMm, Polyline contour, Point end, Point other) {
        TipRecovery tip =
                new TipRecovery(picture, pxPerMm, contour, end, end.minus(other).unit());
        try {
            return tip.regained(contour);
        } finally {
            tip.colours.release();
        }
    }

    private Polyline regained(Polyline contour) {
        ColourDistribution.Sums knife = new ColourDistribution.Sums();
        ColourDistribution.Sums ground = new ColourDistribution.Sums();
        float[] bgr = new float[3 * size * size];
        colours.get(0, 0, bgr);
        for (int i = 0; i < size * size; i++) {
            if (fromContour[i] * STEP_MM < NEAR_MM) {
                continue;
            }
            if (isInside(i) && isLearnedFrom(i)) {
                knife.add(bgr[3 * i], bgr[3 * i + 1], bgr[3 * i + 2]);
            } else if (!isInside(i) && !isAhead(i)) {
                ground.add(bgr[3 * i], bgr[3 * i + 1], bgr[3 * i + 2]);
            }
        }
        if (Math.min(knife.count(), ground.count()) < FEWEST_TO_LEARN_FROM) {
            return contour;
        }
        List<Integer> beyond = beyond(bgr, knife.normal(LEAST_NOISE), ground.normal(LEAST_NOISE));
        return isPoint(beyond) ? withPoint(contour, beyond) : contour;
    }

    /** The cells before the end that are the knife's and go on from it. */
    private List<Integer> beyond(float[] bgr, ColourDistribution knife, ColourDistribution ground) {
        boolean[] passed = new boolean[size * size];
        Deque<Integer> front = new ArrayDeque<>();
        for (int i = 0; i < size * size; i++) {
            if (isInside(i) && isLearnedFrom(i)) {
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
     * The contour with all between where the point begins on one side and where on the other replaced by the point's
     * outermost place; as it is where what was found is no such triangle.
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
        List<Point> regained = new ArrayList<>();
        for (int k = after + 1; k < n - before; k++) {
            regained.add(points.get((at + k) % n));
        }
        regained.add(apex(beyond));
        Polyline pointed = Polyline.closed(regained);
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

    /** How far a cell lies before the end, in mm. */
    private double reach(int i) {
        return place(i).minus(end).dot(ahead) / pxPerMm;
    }

    private boolean isLearnedFrom(int i) {
        return place(i).distance(end) < LEARNED_MM * pxPerMm;
    }

    /** Whether a cell lies where the point may be that was cut off. */
    private boolean isAhead(int i) {
        Point way = place(i).minus(from);
        return way.dot(ahead) > Math.cos(HALF_CONE_RAD) * way.norm() && place(i).distance(end) < MOST_MM * pxPerMm;
    }

    private Point middleInside() {
        Point sum = new Point(0, 0);
        int count = 0;
        for (int i = 0; i < size * size; i++) {
            if (isInside(i) && isLearnedFrom(i)) {
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

    /** 255 inside the contour. */
    private Mat area(Polyline contour) {
        MatOfPoint rim = new MatOfPoint(contour.points().stream()
                .map(p -> p.minus(corner).times(1 / stepPx))
                .map(p -> new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y())))
                .toArray(org.opencv.core.Point[]::new));
        Mat area = Mat.zeros(size, size, CvType.CV_8U);
        Imgproc.fillPoly(area, List.of(rim), new Scalar(255));
        rim.release();
        return area;
    }

    /** How many steps each cell is from the contour. */
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
