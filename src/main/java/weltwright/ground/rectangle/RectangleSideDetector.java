package weltwright.ground.rectangle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import weltwright.geometry.Point;
import weltwright.geometry.fit.SymmetricSystem;
import weltwright.image.InterpolatedChannel;
import weltwright.image.ProfilePeak;

/**
 * One edge of a sheet of paper, followed on the full picture: where paper meets table, to a fraction of a pixel.
 *
 * <p>Across the edge, at places along it, the steepest fall from paper to table is sought. A knife, a shadow or a bent
 * corner spoils some places; the rest lie on a slow curve, straight but for the lens. So a parabola is found that most
 * places agree with (Fischler and Bolles 1981), then a cubic is fitted to those that do, and places off it are dropped.
 */
public final class RectangleSideDetector {
    /** How many places along an edge are looked at. */
    static final int PLACES = 220;

    /** Corners of paper get bent, and near them a profile sees the other edge. */
    private static final double CORNER_PART = 0.03;

    /** How far the edge may be from the straight line, as a part of its length, with the bending of a wide lens. */
    private static final double REACH_PART = 0.014;

    private static final double STEP_PX = 0.5;

    /** Of the light of white, a pixel: less is no edge. */
    private static final double LEAST_SLOPE = 0.004;

    private static final double AGREEMENT_PX = 1.2;

    private static final int TRIES = 150;

    private RectangleSideDetector() {}

    private record Place(double along, double offsetPx) {}

    /**
     * Follows an edge of a sheet of paper from corner to corner.
     *
     * @param from a corner of the paper, roughly
     * @param to the next, with the paper to the {@link Point#left} of the way
     * @param sign 1 where the paper is lighter than what lies beside it, -1 where it is darker
     * @return points of the edge in pixels that agree with each other; none where fewer than two fifths do
     */
    public static List<Point> detect(InterpolatedChannel levels, Point from, Point to, int sign) {
        double lengthPx = from.distance(to);
        Point way = to.minus(from).unit();
        double apartPx = lengthPx * (1 - 2 * CORNER_PART) / PLACES;
        int reach = (int) (Math.max(8, REACH_PART * lengthPx) / STEP_PX);
        List<Place> places = new ArrayList<>();
        for (int k = 0; k < PLACES; k++) {
            double t = CORNER_PART + (1 - 2 * CORNER_PART) * (k + 0.5) / PLACES;
            Point middle = from.towards(to, t);
            if (!levels.contains(middle, reach * STEP_PX)) {
                continue;
            }
            double[] profile = levels.profile(middle, way, apartPx / 2, Math.max(1, apartPx / 6), reach, STEP_PX);
            Arrays.setAll(profile, i -> sign * light(profile[i]));
            double offset = steepestRise(profile);
            if (!Double.isNaN(offset)) {
                places.add(new Place(2 * t - 1, offset));
            }
        }
        return agreeing(places).stream()
                .map(p -> from.towards(to, (p.along() + 1) / 2).plus(way.left().times(p.offsetPx())))
                .toList();
    }

    /**
     * The light behind a grey level, from 0 to 1, by the curve of sRGB (IEC 61966-2-1). A blurred edge has half the
     * light where it is, not half the grey: by grey levels white paper would seem to be larger by a fraction of a
     * pixel.
     */
    private static double light(double level) {
        double v = level / 255;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    /** In pixels from the profile's middle; NaN where levels hardly rise. */
    private static double steepestRise(double[] profile) {
        int n = profile.length;
        double[] rise = new double[n];
        int top = 0;
        for (int k = 2; k < n - 2; k++) {
            // Sobel's weights, over four steps.
            double slope = (profile[k + 2] + 2 * profile[k + 1] - 2 * profile[k - 1] - profile[k - 2]) / (8 * STEP_PX);
            rise[k] = Math.max(0, slope);
            top = rise[k] > rise[top] ? k : top;
        }
        if (rise[top] < LEAST_SLOPE) {
            return Double.NaN;
        }
        int left = top;
        while (left > 0 && rise[left] > rise[top] / 2) {
            left--;
        }
        int right = top;
        while (right < n - 1 && rise[right] > rise[top] / 2) {
            right++;
        }
        double centre = ProfilePeak.centre(rise, top, 1.3 * (right - left) + 1);
        return (centre - (n - 1) / 2.0) * STEP_PX;
    }

    private static List<Place> agreeing(List<Place> places) {
        if (places.size() < PLACES * 2 / 5) {
            return List.of();
        }
        // The same picture must give the same result, so chance is made the same each time.
        Random chance = new Random(1);
        List<Place> best = List.of();
        for (int i = 0; i < TRIES; i++) {
            List<Place> three = List.of(
                    places.get(chance.nextInt(places.size())),
                    places.get(chance.nextInt(places.size())),
                    places.get(chance.nextInt(places.size())));
            if (spread(three) > 0.5) {
                List<Place> agree = near(places, fit(three, 3), AGREEMENT_PX);
                best = agree.size() > best.size() ? agree : best;
            }
        }
        for (int i = 0; i < 3 && best.size() >= PLACES * 2 / 5; i++) {
            double[] cubic = fit(best, 4);
            double[] off = best.stream()
                    .mapToDouble(p -> Math.abs(p.offsetPx() - value(cubic, p.along())))
                    .sorted()
                    .toArray();
            best = near(places, cubic, Math.max(0.15, 3 * off[off.length / 2] / 0.6745));
        }
        return best.size() >= PLACES * 2 / 5 ? best : List.of();
    }

    /** The least distance between any two. */
    private static double spread(List<Place> three) {
        double[] s = three.stream().mapToDouble(Place::along).sorted().toArray();
        return Math.min(s[1] - s[0], s[2] - s[1]);
    }

    private static List<Place> near(List<Place> places, double[] curve, double tolerancePx) {
        return places.stream()
                .filter(p -> Math.abs(p.offsetPx() - value(curve, p.along())) < tolerancePx)
                .toList();
    }

    /** Least squares polynomial of so many terms, lowest first. */
    private static double[] fit(List<Place> places, int terms) {
        double[][] matrix = new double[terms][terms];
        double[] right = new double[terms];
        for (Place p : places) {
            double[] power = new double[terms];
            Arrays.setAll(power, k -> Math.pow(p.along(), k));
            for (int k = 0; k < terms; k++) {
                right[k] += power[k] * p.offsetPx();
                for (int l = 0; l < terms; l++) {
                    matrix[k][l] += power[k] * power[l];
                }
            }
        }
        return new SymmetricSystem(matrix).solve(right);
    }

    private static double value(double[] polynomial, double at) {
        double value = 0;
        for (int k = polynomial.length - 1; k >= 0; k--) {
            value = value * at + polynomial[k];
        }
        return value;
    }
}
