package weltwright.fit;

import weltwright.geometry.Point;

/**
 * Finds the path along which a knife is drawn with the least slack, the mean width of the swept room beyond the knife's
 * outline.
 *
 * <ol>
 *   <li>Straight lines on a grid of angles; the best is refined by halving the steps.
 *   <li>Circles on a grid of angles at the throat and of curvatures, up to the tightest that a wrist can follow; the
 *       best is refined likewise.
 *   <li>A line at an angle is preferred to the axis, and a circle to a line, only where it saves more than the outline
 *       is accurate to.
 * </ol>
 */
final class DrawPathSearch {
    /** Least mean slack that a path must save over a simpler one; the outline is not known better. Chosen by eye. */
    private static final double WORTHWHILE_MM = 0.3;

    /** What a hand can follow, and the grid of the search. Chosen by eye. */
    private static final double WIDEST_ANGLE_RAD = Math.toRadians(20);

    private static final double TIGHTEST_RADIUS_MM = 120;
    private static final int ANGLES = 10;
    private static final int CURVATURES = 6;
    private static final int REFINED = 6;

    /** More than the rounding of a slack. */
    private static final double ROUNDING_MM = 1e-9;

    private final double[] stations;
    private final double[] edge;
    private final double[] spine;

    /**
     * @param stations from the throat to the tip, rising
     * @param edge y of the knife's edge at each
     * @param spine y of its spine at each
     */
    DrawPathSearch(double[] stations, double[] edge, double[] spine) {
        this.stations = stations;
        this.edge = edge;
        this.spine = spine;
    }

    DrawPath best() {
        double straight = slackMm(0, 0, Double.POSITIVE_INFINITY);
        double[] turned = refined(best(0, straight), 1.0 / ANGLES, 0);
        double[] round = refined(best(CURVATURES, straight), 1.0 / ANGLES, 1.0 / CURVATURES);
        double line = slackMm(turned[0], 0, Double.POSITIVE_INFINITY);
        boolean lineIsWorthwhile = line < straight - WORTHWHILE_MM;
        double simplest = lineIsWorthwhile ? line : straight;
        if (slackMm(round[0], round[1], simplest) < simplest - WORTHWHILE_MM) {
            return path(round[0], round[1]);
        }
        return lineIsWorthwhile ? path(turned[0], 0) : DrawPath.alongAxis();
    }

    /** @param straightMm slack of the straight path along the axis, which is one of the grid */
    private double[] best(int curvatures, double straightMm) {
        double[] best = {0, 0};
        double least = Double.POSITIVE_INFINITY;
        for (int i = -ANGLES; i <= ANGLES; i++) {
            for (int k = -curvatures; k <= curvatures; k++) {
                double angle = (double) i / ANGLES;
                double curvature = curvatures == 0 ? 0 : (double) k / curvatures;
                double slack = slackMm(angle, curvature, Math.min(least, straightMm));
                if (slack < least) {
                    least = slack;
                    best = new double[] {angle, curvature};
                }
            }
        }
        return best;
    }

    private double[] refined(double[] from, double angleStep, double curvatureStep) {
        double[] best = from;
        double least = slackMm(from[0], from[1], Double.POSITIVE_INFINITY);
        double part = 0.5;
        for (int round = 0; round < REFINED; round++) {
            double[] middle = best;
            for (int i = -1; i <= 1; i++) {
                for (int k = -1; k <= 1; k++) {
                    double angle = clamped(middle[0] + i * part * angleStep);
                    double curvature = clamped(middle[1] + k * part * curvatureStep);
                    double slack = slackMm(angle, curvature, least);
                    if (slack < least) {
                        least = slack;
                        best = new double[] {angle, curvature};
                    }
                }
            }
            part /= 2;
        }
        return best;
    }

    private static double clamped(double share) {
        return Math.max(-1, Math.min(1, share));
    }

    /**
     * Returns the path with an angle at the throat and a curvature, each as a share of its greatest; a path of positive
     * curvature has its centre on the spine's side.
     */
    private DrawPath path(double angleShare, double curvature) {
        double angle = angleShare * WIDEST_ANGLE_RAD;
        if (curvature == 0) {
            return new DrawPath.Straight(angle);
        }
        double radius = TIGHTEST_RADIUS_MM / curvature;
        Point throat = new Point(stations[0], (edge[0] + spine[0]) / 2);
        Point centre = throat.plus(new Point(Math.sin(angle), Math.cos(angle)).times(radius));
        return new DrawPath.Circular(centre, Math.abs(radius));
    }

    /**
     * Returns the mean width of the swept room beyond the knife's; infinite where a point never passes, and where it is
     * more than {@code mostMm}, which is then found out early.
     */
    private double slackMm(double angle, double curvature, double mostMm) {
        DrawPath path = path(angle, curvature);
        int last = stations.length - 1;
        double most = (mostMm + ROUNDING_MM) * last;
        double low = edge[last];
        double high = spine[last];
        double sum = 0;
        for (int i = last - 1; i >= 0; i--) {
            low = Math.min(edge[i], path.passingMm(new Point(stations[i + 1], low), stations[i]));
            high = Math.max(spine[i], path.passingMm(new Point(stations[i + 1], high), stations[i]));
            sum += high - low - (spine[i] - edge[i]);
            if (sum > most) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum / last;
    }
}
