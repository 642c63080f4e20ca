package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.ColourDistribution;

/**
 * Gives a contour back the points that smoothing has blunted: the tip of a blade.
 *
 * <p>Made for a contour whose sides are right to a few tenths of a millimetre but whose pointed ends fall short of the
 * knife's. What is cut off by far, and has the knife's colours, is given back first ({@link TipRecovery}). The steps
 * after that, at either end of the contour's length:
 *
 * <ol>
 *   <li>lay lines along both sides, a few millimetres back from the end, and find where they meet;
 *   <li>learn the knife's colours just inside that end;
 *   <li>walk from the blunt end towards the meeting point as long as the colours are the knife's;
 *   <li>where that is all the way or nearly so, the meeting point is the tip; else the contour stays as it is.
 * </ol>
 */
public final class TipSharpener {
    private static final double SIDE_FROM_MM = 3;
    private static final double SIDE_TO_MM = 8;

    /** A longer point than this would not have been lost. */
    private static final double MOST_MM = 8;

    private static final double LEAST_MM = 0.3;

    /** Two sides that meet at more than this make no point. */
    private static final double WIDEST_RAD = Math.toRadians(110);

    /** So much of the way must be the knife's: the last of a tip is blurred into the ground. */
    private static final double KNIFE_PART = 0.7;

    /** Squared distance from the knife's colours, in their own spread, up to which a colour is one of them. */
    private static final double KNIFE_COLOUR = 14;

    /** Variance of a pixel's noise, in grey levels squared, that is always there. */
    private static final double NOISE = 25;

    private final DecodedPhoto picture;
    private final double pxPerMm;

    public TipSharpener(DecodedPhoto picture, double pxPerMm) {
        this.picture = picture;
        this.pxPerMm = pxPerMm;
    }

    /**
     * Gives the contour with its tip drawn out to where the knife ends.
     *
     * @param contour closed, in pixels
     */
    public Polyline sharpened(Polyline contour) {
        Polyline even = contour.resampled(0.3 * pxPerMm);
        int[] ends = ends(even.points());
        Point first = even.points().get(ends[0]);
        Point second = even.points().get(ends[1]);
        return sharpened(sharpened(even, first, second), second, first);
    }

    private Polyline sharpened(Polyline shortened, Point near, Point other) {
        Polyline contour = TipRecovery.regained(picture, pxPerMm, shortened, near, other);
        List<Point> points = contour.points();
        Point end = contour.equals(shortened) ? near : points.get(points.size() - 1);
        int nearest = 0;
        for (int i = 1; i < points.size(); i++) {
            nearest = points.get(i).distance(end) < points.get(nearest).distance(end) ? i : nearest;
        }
        return sharpened(contour, nearest);
    }

    /** Two points as far apart as any, nearly: the farthest from the middle, and the farthest from that. */
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

    private Polyline sharpened(Polyline contour, int end) {
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
        if (Math.abs(sine) < 0.1 || apexAngle > WIDEST_RAD) {
            return contour;
        }
        Point apex = a.plus(alongA.times(b.minus(a).cross(alongB) / sine));
        Point blunt = points.get(end);
        double reach = apex.minus(blunt).dot(alongA.plus(alongB).unit());
        if (reach < LEAST_MM * pxPerMm || reach > MOST_MM * pxPerMm) {
            return contour;
        }
        ColourDistribution knife = learn(blunt, a.towards(b, 0.5), a, b);
        // Started a little behind the blunt end: how blunt exactly it is says nothing.
        int steps = 20;
        int inside = 0;
        for (int i = 0; i < steps; i++) {
            inside += has(knife, blunt.towards(apex, (i + 0.5) / steps)) ? 1 : 0;
        }
        boolean groundDiffers = !has(knife, apex.plus(apex.minus(blunt).unit().times(1.5 * pxPerMm)));
        if (inside < KNIFE_PART * steps || !groundDiffers) {
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

    /** The colours inside the end, between the blunt end and the line from side to side. */
    private ColourDistribution learn(Point blunt, Point back, Point a, Point b) {
        ColourDistribution.Sums colours = new ColourDistribution.Sums();
        for (double along = 0.25; along <= 1; along += 0.05) {
            Point on = blunt.towards(back, along);
            // The end narrows towards its tip; keep to the middle of it.
            Point half = b.minus(a).times(0.3 * along);
            for (double across = -0.5; across <= 0.5; across += 0.1) {
                double[] colour = colour(on.plus(half.times(across)));
                colours.add(colour[0], colour[1], colour[2]);
            }
        }
        return colours.normal(NOISE);
    }

    private boolean has(ColourDistribution knife, Point px) {
        double[] colour = colour(px);
        return knife.squaredDistance(colour[0], colour[1], colour[2]) < KNIFE_COLOUR;
    }

    private double[] colour(Point px) {
        int x = (int) Math.max(0, Math.min(picture.widthPx() - 1, Math.round(px.x())));
        int y = (int) Math.max(0, Math.min(picture.heightPx() - 1, Math.round(px.y())));
        return picture.bgrAt(x, y);
    }
}
