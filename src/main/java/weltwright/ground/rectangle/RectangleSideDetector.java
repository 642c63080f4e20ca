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
 * Detects points on one side of a rectangle in a picture, such as the edge of a sheet of paper, to a fraction of a
 * pixel.
 *
 * <p>The side is straight on the ground and, through the distortion of the lens, a curve of small curvature in the
 * picture. The steps:
 *
 * <ol>
 *   <li>at places along the side, find the steepest rise of light from outside to inside in the profile across it;
 *   <li>find the parabola that most places agree with by random sampling (Fischler and Bolles 1981), which ignores
 *       places that a knife, a shadow or a bent corner spoils;
 *   <li>fit a cubic to the agreeing places three times, each time dropping those more than three robust standard
 *       deviations off.
 * </ol>
 */
public final class RectangleSideDetector {
    /** Number of profiles along a side. Chosen by eye. */
    static final int PROFILES = 220;

    /**
     * Part of the side left out at each end, where corners may be bent and profiles meet the other edge. Chosen by eye.
     */
    private static final double CORNER_PART = 0.03;

    /**
     * Greatest distance of the edge from the line between the corners, relative to its length; allows for the
     * distortion of wide lenses. Chosen by eye.
     */
    private static final double REACH_PART = 0.014;

    /** Distance of the samples of a profile. Chosen by eye. */
    private static final double STEP_PX = 0.5;

    /** Least slope of an edge, per pixel, relative to white. Chosen by eye. */
    private static final double LEAST_SLOPE = 0.004;

    /** Distance from the parabola within which a place agrees with it. Chosen by eye. */
    private static final double AGREEMENT_PX = 1.2;

    /** Number of random samples. Chosen by eye. */
    private static final int TRIES = 150;

    private RectangleSideDetector() {}

    /**
     * The edge in one profile.
     *
     * @param along position along the side, from -1 to 1
     * @param offsetPx distance of the edge from the line between the corners
     */
    private record Place(double along, double offsetPx) {}

    /**
     * Detects points of a side.
     *
     * @param from a corner, roughly
     * @param to the next corner, so that the inside lies to the {@link Point#left} of the direction
     * @param sign 1 where the inside is lighter than the outside, -1 where it is darker
     * @return points in pixels that agree with a smooth curve; none where fewer than two fifths of the profiles do
     */
    public static List<Point> detect(InterpolatedChannel levels, Point from, Point to, int sign) {
        double lengthPx = from.distance(to);
        Point way = to.minus(from).unit();
        double apartPx = lengthPx * (1 - 2 * CORNER_PART) / PROFILES;
        int reach = (int) (Math.max(8, REACH_PART * lengthPx) / STEP_PX);
        List<Place> places = new ArrayList<>();
        for (int k = 0; k < PROFILES; k++) {
            double t = CORNER_PART + (1 - 2 * CORNER_PART) * (k + 0.5) / PROFILES;
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
     * Converts a grey level to linear light, 0 to 1, by the sRGB curve (IEC 61966-2-1). The middle of a blurred edge
     * has half the light, not half the grey level; by grey levels white paper would appear larger by a fraction of a
     * pixel.
     */
    private static double light(double level) {
        double v = level / 255;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    /** Returns the position of the steepest rise in pixels from the profile's middle; NaN where there is no edge. */
    private static double steepestRise(double[] profile) {
        int n = profile.length;
        double[] rise = new double[n];
        int top = 0;
        for (int k = 2; k < n - 2; k++) {
            // Smoothed central difference over four steps.
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

    /** Returns the places that lie on a smooth curve. */
    private static List<Place> agreeing(List<Place> places) {
        if (places.size() < PROFILES * 2 / 5) {
            return List.of();
        }
        // A fixed seed, so that results are reproducible.
        Random random = new Random(1);
        List<Place> best = List.of();
        for (int i = 0; i < TRIES; i++) {
            List<Place> three = List.of(
                    places.get(random.nextInt(places.size())),
                    places.get(random.nextInt(places.size())),
                    places.get(random.nextInt(places.size())));
            if (spread(three) > 0.5) {
                List<Place> agree = near(places, fit(three, 3), AGREEMENT_PX);
                best = agree.size() > best.size() ? agree : best;
            }
        }
        for (int i = 0; i < 3 && best.size() >= PROFILES * 2 / 5; i++) {
            double[] cubic = fit(best, 4);
            double[] off = best.stream()
                    .mapToDouble(p -> Math.abs(p.offsetPx() - value(cubic, p.along())))
                    .sorted()
                    .toArray();
            best = near(places, cubic, Math.max(0.15, 3 * off[off.length / 2] / 0.6745));
        }
        return best.size() >= PROFILES * 2 / 5 ? best : List.of();
    }

    /** Returns the least distance between any two places along the side. */
    private static double spread(List<Place> three) {
        double[] s = three.stream().mapToDouble(Place::along).sorted().toArray();
        return Math.min(s[1] - s[0], s[2] - s[1]);
    }

    private static List<Place> near(List<Place> places, double[] curve, double tolerancePx) {
        return places.stream()
                .filter(p -> Math.abs(p.offsetPx() - value(curve, p.along())) < tolerancePx)
                .toList();
    }

    /** Fits a polynomial by least squares; returns its coefficients, lowest first. */
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
