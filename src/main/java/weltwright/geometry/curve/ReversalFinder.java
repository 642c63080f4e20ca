package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds the places where a closed curve turns back on itself: the apex of a spike or of a notch whose sides enclose
 * less than 45 degrees a millimetre from it. Distances and angle are chosen by eye: a knife's tip is such a place, and
 * hardly anything else on a knife.
 */
public final class ReversalFinder {
    private static final double STEP_MM = 0.2;

    /** Steps to either side over which a direction is taken, 1 mm. */
    private static final int REACH = 5;

    /** Cosine of the angle between the directions before and after the apex, 135 degrees. */
    private static final double GREATEST_COSINE = -Math.sqrt(0.5);

    /** Places of one curve nearer to each other, along it, are one place. */
    private static final int ONE_PLACE = 2 * REACH;

    private ReversalFinder() {}

    /** Returns the apexes in the order of the curve, for each place the point at which the curve turns most. */
    public static List<Point> find(Outline outline) {
        List<Point> points = resampled(outline.sampled(STEP_MM));
        int count = points.size();
        List<Point> found = new ArrayList<>();
        int last = -ONE_PLACE;
        double most = 0;
        for (int i = 0; i < count; i++) {
            double cosine = cosine(points, i);
            if (cosine >= GREATEST_COSINE) {
                continue;
            }
            boolean same = i - last < ONE_PLACE;
            if (!same) {
                found.add(points.get(i));
                most = cosine;
            } else if (cosine < most) {
                found.set(found.size() - 1, points.get(i));
                most = cosine;
            }
            last = i;
        }
        return found;
    }

    private static List<Point> resampled(Polyline closed) {
        double lengthMm = closed.lengthMm();
        int count = Math.max(4 * REACH, (int) Math.ceil(lengthMm / STEP_MM));
        double[] stations = new double[count];
        for (int i = 0; i < count; i++) {
            stations[i] = i * lengthMm / count;
        }
        return closed.at(stations);
    }

    private static double cosine(List<Point> points, int i) {
        int count = points.size();
        Point apex = points.get(i);
        Point in = apex.minus(points.get(Math.floorMod(i - REACH, count)));
        Point out = points.get((i + REACH) % count).minus(apex);
        return in.norm() == 0 || out.norm() == 0 ? -1 : in.unit().dot(out.unit());
    }
}
