package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.ColourDistribution;
import weltwright.trace.appearance.ColourStatistics;

/**
 * Restores the tips of a contour that smoothing has blunted.
 *
 * <p>Made for a contour whose sides are accurate to a few tenths of a millimetre and whose pointed ends are too short.
 * The steps, at either end of the contour's length:
 *
 * <ol>
 *   <li>recover a tip that is cut off altogether ({@link TipRecovery});
 *   <li>intersect lines along both sides, a few millimetres back from the end;
 *   <li>estimate the distribution of the knife's colours just inside that end;
 *   <li>where nearly all colours between the end and the intersection are the knife's, and those beyond are not, the
 *       intersection is the tip; otherwise the contour is unchanged.
 * </ol>
 */
public final class TipSharpener {
    /** Distance from the end, along the contour, at which the lines along its sides begin; chosen by eye. */
    private static final double SIDE_FROM_MM = 3;

    /** Distance from the end at which they stop; chosen by eye. */
    private static final double SIDE_TO_MM = 8;

    /** Greatest length that is added: smoothing does not take more; chosen by eye. */
    private static final double MOST_MM = 8;

    /** Least length that is worth adding: about the mask's accuracy; chosen by eye. */
    private static final double LEAST_MM = 0.3;

    /** Greatest angle of a tip; chosen by eye. */
    private static final double WIDEST_RAD = Math.toRadians(110);

    /** Least sine of that angle for a stable intersection: 6 degrees; chosen by eye. */
    private static final double LEAST_SINE = 0.1;

    /** Points between the end and the intersection at which the colour is tested; chosen by eye. */
    private static final int TESTED_POINTS = 20;

    /** Least part of them that must be the knife's; the last of a tip is blurred into the ground. Chosen by eye. */
    private static final double KNIFE_PART = 0.7;

    /** Squared Mahalanobis distance of the knife's colours: exceeded by 0.3 % (chi-squared, 3 degrees of freedom). */
    private static final double KNIFE_COLOUR = 14;

    /** Least variance of a pixel's channel, in grey levels squared; chosen by eye. */
    private static final double NOISE = 25;

    /** Distance beyond the tip at which the colour must be the ground's; chosen by eye. */
    private static final double BEYOND_MM = 1.5;

    /** Distance of the points of the contour; chosen by eye. */
    private static final double POINT_MM = 0.3;

    private final DecodedPhoto picture;
    private final double pxPerMm;

    public TipSharpener(DecodedPhoto picture, double pxPerMm) {
        this.picture = picture;
        this.pxPerMm = pxPerMm;
    }

    /**
     * Returns the contour with its ends extended to the knife's tips.
     *
     * @param contour closed, in pixels
     */
    public Polyline sharpen(Polyline contour) {
        Polyline even = contour.resampled(POINT_MM * pxPerMm);
        int[] ends = ends(even.points());
        Point first = even.points().get(ends[0]);
        Point second = even.points().get(ends[1]);
        return sharpen(sharpen(even, first, second), second, first);
    }

    private Polyline sharpen(Polyline shortened, Point near, Point other) {
        Polyline contour = TipRecovery.recover(picture, pxPerMm, shortened, near, other);
        List<Point> points = contour.points();
        Point end = contour.equals(shortened) ? near : points.get(points.size() - 1);
        int nearest = 0;
        for (int i = 1; i < points.size(); i++) {
            nearest = points.get(i).distance(end) < points.get(nearest).distance(end) ? i : nearest;
        }
        return sharpen(contour, nearest);
    }

    /** Returns two points nearly as far apart as any: the farthest from the centroid, and the farthest from that. */
    private static int[] ends(List<Point> points) {
        Point middle = points.stream().reduce(new Point(0, 0), Point::plus).times(1.0 / points.size());
        int first = farthest(points, middle);
        return new int[] {first, farthest(points, points.get(first))};
    }

    private static int farthest(List<Point> points, Point from) {
        int farthest = 0;
        for (int i = 1; i < points.size(); i++) {
            farthest = points.get(i).distance(from) > points.get(farthest).distance(from) ? i : farthest;
        }
        return farthest;
    }

    private Polyline sharpen(Polyline contour, int end) {
        List<Point> points = contour.points();
        int n = points.size();
        double step = contour.lengthMm() / n;
        int near = (int) Math.round(SIDE_FROM_MM * pxPerMm / step);
        int far = (int) Math.round(SIDE_TO_MM * pxPerMm / step);
        Point a = point(points, end - near);
        Point b = point(points, end + near);
        Point alongA = a.minus(point(points, end - far)).unit();
        Point alongB = b.minus(point(points, end + far)).unit();
        double sine = alongA.cross(alongB);
        double apexAngle = Math.PI - Math.acos(Math.max(-1, Math.min(1, -alongA.dot(alongB))));
        if (Math.abs(sine) < LEAST_SINE || apexAngle > WIDEST_RAD) {
            return contour;
        }
        Point apex = a.plus(alongA.times(b.minus(a).cross(alongB) / sine));
        Point blunt = points.get(end);
        double reach = apex.minus(blunt).dot(alongA.plus(alongB).unit());
        if (reach < LEAST_MM * pxPerMm || reach > MOST_MM * pxPerMm) {
            return contour;
        }
        ColourDistribution knife = colours(blunt, a.towards(b, 0.5), a, b);
        int inside = 0;
        for (int i = 0; i < TESTED_POINTS; i++) {
            inside += has(knife, blunt.towards(apex, (i + 0.5) / TESTED_POINTS)) ? 1 : 0;
        }
        boolean groundDiffers = !has(knife, apex.plus(apex.minus(blunt).unit().times(BEYOND_MM * pxPerMm)));
        if (inside < KNIFE_PART * TESTED_POINTS || !groundDiffers) {
            return contour;
        }
        List<Point> sharp = new ArrayList<>();
        for (int k = near; k <= n - near; k++) {
            sharp.add(point(points, end + k));
        }
        sharp.add(apex);
        return Polyline.closed(sharp);
    }

    private static Point point(List<Point> points, int i) {
        return points.get(Math.floorMod(i, points.size()));
    }

    /** Returns the distribution of the colours between the blunt end and the line from side to side. */
    private ColourDistribution colours(Point blunt, Point back, Point a, Point b) {
        double[] colours = new double[ColourStatistics.SIZE];
        for (double along = 0.25; along <= 1; along += 0.05) {
            Point on = blunt.towards(back, along);
            // The end narrows towards its tip; keep to the middle of it.
            Point half = b.minus(a).times(0.3 * along);
            for (double across = -0.5; across <= 0.5; across += 0.1) {
                ColourStatistics.add(colours, 0, colour(on.plus(half.times(across))), 0);
            }
        }
        return new ColourStatistics(colours).distribution(NOISE);
    }

    private boolean has(ColourDistribution knife, Point px) {
        float[] colour = colour(px);
        return knife.squaredDistance(colour[0], colour[1], colour[2]) < KNIFE_COLOUR;
    }

    private float[] colour(Point px) {
        int x = (int) Math.max(0, Math.min(picture.widthPx() - 1, Math.round(px.x())));
        int y = (int) Math.max(0, Math.min(picture.heightPx() - 1, Math.round(px.y())));
        double[] bgr = picture.bgrAt(x, y);
        return new float[] {(float) bgr[0], (float) bgr[1], (float) bgr[2]};
    }
}
