package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.ColourStatistics;

/**
 * Restores the tips of a contour that smoothing has blunted.
 *
 * <p>Made for a contour whose sides are accurate to a few tenths of a millimetre and whose pointed ends are too short.
 * The steps, at either end of the contour's length:
 *
 * <ol>
 *   <li>intersect lines along both sides, a few millimetres back from the end, in an apex;
 *   <li>cut what lies between the end and the apex into slices, and compare the mean colour of each with that of the
 *       ground to both sides of it, without the ground's print. Where the two differ the knife hides the ground;
 *   <li>extend the contour by the slices for which that is most likely, or leave it unchanged.
 * </ol>
 *
 * <p>A tip may mirror something else than the rest of the blade. So it need not have the knife's colour, but it must
 * stand out from the ground about half as much as the knife does: a shadow beyond the tip stands out less.
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
    private static final double WIDEST_RAD = Math.toRadians(90);

    /** Least sine of that angle for a stable intersection: 6 degrees; chosen by eye. */
    private static final double LEAST_SINE = 0.1;

    /** Length of a slice; chosen by eye. */
    private static final double SLICE_MM = 0.25;

    /** Part of the width that is sampled: the sides are blurred into the ground; chosen by eye. */
    private static final double MIDDLE_PART = 0.6;

    /** Part of the known end, from the lines' beginning on, where the knife's colour is sampled; chosen by eye. */
    private static final double KNIFE_PART = 0.75;

    /** Part of the way to the apex from which on the tip is the apex: the last of a tip is blurred. Chosen by eye. */
    private static final double WHOLE_PART = 0.7;

    /** Distances from a side of the tip between which the ground's colour is sampled; chosen by eye. */
    private static final double BESIDE_FROM_MM = 0.4;

    private static final double BESIDE_TO_MM = 1.4;

    /** Variance of a pixel's noise, in grey levels squared; chosen by eye. */
    private static final double PIXEL_VARIANCE = 25;

    /** Variance of a mean colour however many pixels it is of, in grey levels squared; chosen by eye. */
    private static final double MEAN_VARIANCE = 1;

    /** Difference of the ground's colour between both sides where only one is seen, as a part of it; chosen by eye. */
    private static final double UNSEEN_SLOPE = 0.04;

    /** Standard deviation of a shadow beyond the tip, as a part of the knife's contrast with the ground; by eye. */
    private static final double SHADOW_PART = 1 / 3.0;

    /** Greatest squared deviation from the ground that counts, so that no single slice decides; chosen by eye. */
    private static final double MOST_SQUARE = 9;

    /** Distance of the points of the contour; chosen by eye. */
    private static final double POINT_MM = 0.3;

    private final DecodedPhoto picture;
    private final double pxPerMm;
    private final Predicate<Point> isPlain;

    /**
     * Prepares the search.
     *
     * @param isPlain whether the ground at a pixel is without print
     */
    public TipSharpener(DecodedPhoto picture, double pxPerMm, Predicate<Point> isPlain) {
        this.picture = picture;
        this.pxPerMm = pxPerMm;
        this.isPlain = isPlain;
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
        Tip tip = new Tip(a, b, blunt, apex);
        double part = tip.hiddenPart();
        if (part * reach < LEAST_MM * pxPerMm) {
            return contour;
        }
        List<Point> sharp = new ArrayList<>();
        for (int k = near; k <= n - near; k++) {
            sharp.add(point(points, end + k));
        }
        sharp.addAll(tip.end(part));
        return Polyline.closed(sharp);
    }

    private static Point point(List<Point> points, int i) {
        return points.get(Math.floorMod(i, points.size()));
    }

    /** The triangle between both sides of a tip. A place along it is 0 between the sides and 1 at the apex. */
    private final class Tip {
        private final Point left;
        private final Point right;
        private final Point apex;
        private final Point middle;
        private final Point axis;
        private final double from;

        /**
         * Prepares the search.
         *
         * @param left a point of one side, in pixels
         * @param right a point of the other
         * @param blunt the contour's end between them
         */
        Tip(Point left, Point right, Point blunt, Point apex) {
            this.left = left;
            this.right = right;
            this.apex = apex;
            this.middle = left.towards(right, 0.5);
            this.axis = apex.minus(middle);
            this.from = blunt.minus(middle).dot(axis) / axis.dot(axis);
        }

        /**
         * Returns the part of the way from the blunt end to the apex along which the ground is hidden: that of the
         * greatest log-likelihood ratio. Each hidden slice has a colour of its own, and so a parameter more than the
         * ground, which costs 1 (Akaike 1974).
         */
        double hiddenPart() {
            int slices = Math.max(1, (int) Math.round((1 - from) * axis.norm() / (SLICE_MM * pxPerMm)));
            ColourStatistics knife = inside(0, KNIFE_PART * from);
            double sum = 0;
            double most = 0;
            double part = 0;
            for (int i = 0; i < slices; i++) {
                double start = from + (1 - from) * i / slices;
                double stop = from + (1 - from) * (i + 1) / slices;
                ColourStatistics one = beside(start, stop, -1);
                ColourStatistics other = beside(start, stop, 1);
                ColourStatistics slice = inside(start, stop);
                if (slice.count() > 0 && one.count() + other.count() > 0) {
                    sum += Math.min(MOST_SQUARE, squaredDeviation(slice, one, other, knife)) / 2 - 1;
                }
                if (sum > most) {
                    most = sum;
                    part = (i + 1.0) / slices;
                }
            }
            return part;
        }

        /** Returns the mean over the channels of the squared deviation of a slice from the ground, in variances. */
        private static double squaredDeviation(
                ColourStatistics slice, ColourStatistics one, ColourStatistics other, ColourStatistics knife) {
            boolean both = one.count() > 0 && other.count() > 0;
            double[] seen = (one.count() > 0 ? one : other).mean();
            double[] across = other.mean();
            double square = 0;
            for (int c = 0; c < 3; c++) {
                double ground = both ? (seen[c] + across[c]) / 2 : seen[c];
                double slope = both ? seen[c] - across[c] : UNSEEN_SLOPE * ground;
                double shadow = SHADOW_PART * (knife.mean()[c] - ground);
                double variance = PIXEL_VARIANCE / slice.count()
                        + MEAN_VARIANCE
                        // The ground in the middle lies between both sides, so that four deviations span them.
                        + slope * slope / 16
                        + shadow * shadow;
                square += Math.pow(slice.mean()[c] - ground, 2) / variance / 3;
            }
            return square;
        }

        private ColourStatistics inside(double start, double stop) {
            Point half = half((start + stop) / 2).times(MIDDLE_PART);
            return plain(start, stop, half.times(-1), half);
        }

        /** @param side −1 to the left, 1 to the right */
        private ColourStatistics beside(double start, double stop, int side) {
            Point half = half((start + stop) / 2);
            Point out = half.unit().times(pxPerMm);
            return plain(
                    start,
                    stop,
                    half.plus(out.times(BESIDE_FROM_MM)).times(side),
                    half.plus(out.times(BESIDE_TO_MM)).times(side));
        }

        /** Returns the vector from the axis to the right side at a place. */
        private Point half(double place) {
            return right.minus(left).times((1 - place) / 2);
        }

        /** Returns the colours of what is plain between two places and two offsets from the axis. */
        private ColourStatistics plain(double start, double stop, Point offset, Point otherOffset) {
            int rows = (int) Math.max(1, Math.ceil((stop - start) * axis.norm()));
            int columns = (int) Math.max(1, Math.ceil(otherOffset.distance(offset)));
            double[] sums = new double[ColourStatistics.SIZE];
            for (int i = 0; i < rows; i++) {
                Point foot = middle.plus(axis.times(start + (stop - start) * (i + 0.5) / rows));
                for (int j = 0; j < columns; j++) {
                    Point at = foot.plus(offset.towards(otherOffset, (j + 0.5) / columns));
                    if (isPlain.test(at)) {
                        ColourStatistics.add(sums, 0, colour(at), 0);
                    }
                }
            }
            return new ColourStatistics(sums);
        }

        /** Returns the points that end the contour after a part of the way from the blunt end to the apex. */
        List<Point> end(double part) {
            if (part > WHOLE_PART) {
                return List.of(apex);
            }
            double place = from + (1 - from) * part;
            return List.of(left.towards(apex, place), right.towards(apex, place));
        }
    }

    private float[] colour(Point px) {
        int x = (int) Math.max(0, Math.min(picture.widthPx() - 1, Math.round(px.x())));
        int y = (int) Math.max(0, Math.min(picture.heightPx() - 1, Math.round(px.y())));
        double[] bgr = picture.bgrAt(x, y);
        return new float[] {(float) bgr[0], (float) bgr[1], (float) bgr[2]};
    }
}
