package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.ColourStatistics;

/**
 * Restores the tips of a contour that smoothing has blunted.
 *
 * <p>Made for a contour whose sides are accurate to a few tenths of a millimetre and whose pointed ends are too short.
 * The steps, at either end of the contour's length:
 *
 * <ol>
 *   <li>intersect lines along both sides, a few millimetres back from the end;
 *   <li>sample the knife's colours just inside that end, and the ground's beside it;
 *   <li>where the mean colour between the end and the intersection is nearer to the knife's, by Fisher's discriminant,
 *       and that beyond differs from it, the intersection is the tip; otherwise the contour is unchanged.
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

    /** Places along and across an area at which its colours are sampled; chosen by eye. */
    private static final int SAMPLES = 15;

    /** Part of the width that is sampled: the sides are blurred into the ground; chosen by eye. */
    private static final double MIDDLE_PART = 0.6;

    /** Part of the known end, from the lines' beginning on, where the knife's colours are sampled; chosen by eye. */
    private static final double KNIFE_PART = 0.75;

    /** Part of what would be added where its colours are sampled: the last of a tip is blurred. Chosen by eye. */
    private static final double ADDED_PART = 0.7;

    /** Distances from a side of the tip between which the ground's colours are sampled; chosen by eye. */
    private static final double BESIDE_FROM_MM = 1;

    private static final double BESIDE_TO_MM = 4;

    /** Difference from the median brightness, relative to it, above which a colour is of other print; by eye. */
    private static final double UNEVEN_PART = 0.2;

    /**
     * Distances beyond the intersection between which the colours must be other than the knife's; the tip of sides that
     * bulge lies a millimetre or two farther than it. Chosen by eye.
     */
    private static final double BEYOND_FROM_MM = 2;

    private static final double BEYOND_TO_MM = 3;

    /** Least squared difference of knife and ground, in variances of a pixel; chosen by eye. */
    private static final double LEAST_DIFFERENCE = 0.25;

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
        return sharpen(sharpen(even, first), second);
    }

    private Polyline sharpen(Polyline contour, Point end) {
        List<Point> points = contour.points();
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
        if (!isTip(a, b, blunt, apex)) {
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

    /**
     * Returns whether the mean colour between the blunt end and the apex is the knife's, and that beyond is not. Means
     * over an area tell a faint difference that single pixels do not.
     */
    private boolean isTip(Point a, Point b, Point blunt, Point apex) {
        Point middle = a.towards(b, 0.5);
        double length = apex.distance(middle);
        double end = blunt.distance(middle) / length;
        double mm = pxPerMm / length;
        ColourStatistics knife = colours(a, b, apex, 0, KNIFE_PART * end);
        ColourStatistics ground = coloursBeside(a, b, apex);
        ColourStatistics.Discriminant discriminant = knife.against(ground);
        ColourStatistics added = colours(a, b, apex, end, end + ADDED_PART * (1 - end));
        ColourStatistics beyond = colours(a, b, apex, 1 + BEYOND_FROM_MM * mm, 1 + BEYOND_TO_MM * mm);
        return discriminant.square() > LEAST_DIFFERENCE
                && discriminant.part(knife, added) < 0.5
                && Math.abs(discriminant.part(knife, beyond)) > 0.5;
    }

    /**
     * Returns the colours along the middle of the triangle between both sides and the apex, and of its continuation.
     *
     * @param from place along it, 0 between the sides and 1 at the apex
     * @param to the other end
     */
    private ColourStatistics colours(Point a, Point b, Point apex, double from, double to) {
        double[] colours = new double[ColourStatistics.SIZE];
        Point middle = a.towards(b, 0.5);
        for (int i = 0; i < SAMPLES; i++) {
            double along = from + (to - from) * i / (SAMPLES - 1);
            Point half = b.minus(a).times(MIDDLE_PART / 2 * (1 - along));
            for (int j = 0; j < SAMPLES; j++) {
                double across = 2.0 * j / (SAMPLES - 1) - 1;
                Point on = middle.plus(apex.minus(middle).times(along)).plus(half.times(across));
                ColourStatistics.add(colours, 0, colour(on), 0);
            }
        }
        return new ColourStatistics(colours);
    }

    /** Returns the colours of the ground outside of both sides of the tip, without print much darker than it. */
    private ColourStatistics coloursBeside(Point a, Point b, Point apex) {
        List<float[]> beside = new ArrayList<>();
        addBeside(beside, a, b, apex);
        addBeside(beside, b, a, apex);
        double median = OrderStatistic.median(
                beside.stream().mapToDouble(TipSharpener::brightness).toArray());
        double[] colours = new double[ColourStatistics.SIZE];
        beside.stream()
                .filter(bgr -> Math.abs(brightness(bgr) - median) < UNEVEN_PART * median)
                .forEach(bgr -> ColourStatistics.add(colours, 0, bgr, 0));
        return new ColourStatistics(colours);
    }

    /** Adds the colours beside one side of the tip, from a point of it to the apex, away from the other side. */
    private void addBeside(List<float[]> colours, Point side, Point other, Point apex) {
        Point away = side.minus(other).unit();
        for (int i = 0; i < SAMPLES; i++) {
            for (int j = 0; j < SAMPLES; j++) {
                double mm = BESIDE_FROM_MM + (BESIDE_TO_MM - BESIDE_FROM_MM) * j / (SAMPLES - 1);
                colours.add(colour(side.towards(apex, i / (SAMPLES - 1.0)).plus(away.times(mm * pxPerMm))));
            }
        }
    }

    private static double brightness(float[] bgr) {
        return (bgr[0] + bgr[1] + bgr[2]) / 3;
    }

    private float[] colour(Point px) {
        int x = (int) Math.max(0, Math.min(picture.widthPx() - 1, Math.round(px.x())));
        int y = (int) Math.max(0, Math.min(picture.heightPx() - 1, Math.round(px.y())));
        double[] bgr = picture.bgrAt(x, y);
        return new float[] {(float) bgr[0], (float) bgr[1], (float) bgr[2]};
    }
}
