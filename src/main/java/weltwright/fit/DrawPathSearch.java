package weltwright.fit;

import weltwright.geometry.Point;

/**
 * Finds the path along which a knife is drawn with the least slack: that which sweeps the least room beyond the knife's
 * own outline.
 *
 * <p>Straight along the axis is what hands do. A turned line, and then a circle, are taken only where they save more
 * than an outline is known to.
 *
 * <ol>
 *   <li>Turned lines on a grid of angles, the best one refined by halving the steps.
 *   <li>Circles: each angle at the throat with each bend of a grid, from slight to the tightest that a wrist can
 *       follow, refined in the same way.
 * </ol>
 */
final class DrawPathSearch {
    /** A path must save so much, on average over the length, over a simpler one. */
    private static final double WORTHWHILE_MM = 0.3;

    private static final double WIDEST_TURN_RAD = Math.toRadians(20);
    private static final double TIGHTEST_RADIUS_MM = 120;
    private static final int TURNS = 10;
    private static final int BENDS = 6;
    private static final int REFINED = 6;

    private final double[] stations;
    private final double[] edge;
    private final double[] spine;

    /**
     * @param stations from the throat to the tip, rising
     * @param edge the knife's own y on the edge's side at each
     * @param spine the same on the spine's side
     */
    DrawPathSearch(double[] stations, double[] edge, double[] spine) {
        this.stations = stations;
        this.edge = edge;
        this.spine = spine;
    }

    DrawPath best() {
        double straight = slackMm(0, 0);
        double[] turned = refined(best(0), 1.0 / TURNS, 0);
        double[] round = refined(best(BENDS), 1.0 / TURNS, 1.0 / BENDS);
        double line = slackMm(turned[0], 0);
        boolean lineIsWorthwhile = line < straight - WORTHWHILE_MM;
        double simplest = lineIsWorthwhile ? line : straight;
        if (slackMm(round[0], round[1]) < simplest - WORTHWHILE_MM) {
            return path(round[0], round[1]);
        }
        return lineIsWorthwhile ? path(turned[0], 0) : DrawPath.alongAxis();
    }

    private double[] best(int bends) {
        double[] best = {0, 0};
        double least = Double.POSITIVE_INFINITY;
        for (int i = -TURNS; i <= TURNS; i++) {
            for (int k = -bends; k <= bends; k++) {
                double slack = slackMm((double) i / TURNS, bends == 0 ? 0 : (double) k / bends);
                if (slack < least) {
                    least = slack;
                    best = new double[] {(double) i / TURNS, bends == 0 ? 0 : (double) k / bends};
                }
            }
        }
        return best;
    }

    private double[] refined(double[] from, double turnStep, double bendStep) {
        double[] best = from;
        double least = slackMm(from[0], from[1]);
        double part = 0.5;
        for (int round = 0; round < REFINED; round++) {
            double[] middle = best;
            for (int i = -1; i <= 1; i++) {
                for (int k = -1; k <= 1; k++) {
                    double turn = clamped(middle[0] + i * part * turnStep);
                    double bend = clamped(middle[1] + k * part * bendStep);
                    double slack = slackMm(turn, bend);
                    if (slack < least) {
                        least = slack;
                        best = new double[] {turn, bend};
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
     * The path with a turn at the throat and a bend, each as a share of its greatest; a positive bend has its centre on
     * the spine's side.
     */
    private DrawPath path(double turn, double bend) {
        double angle = turn * WIDEST_TURN_RAD;
        if (bend == 0) {
            return new DrawPath.Straight(angle);
        }
        double radius = TIGHTEST_RADIUS_MM / bend;
        Point throat = new Point(stations[0], (edge[0] + spine[0]) / 2);
        Point centre = throat.plus(new Point(Math.sin(angle), Math.cos(angle)).times(radius));
        return new DrawPath.Circular(centre, Math.abs(radius));
    }

    /** How much wider than the knife the swept room is, on average; beyond all bounds where a point never passes. */
    private double slackMm(double turn, double bend) {
        DrawPath path = path(turn, bend);
        int last = stations.length - 1;
        double low = edge[last];
        double high = spine[last];
        double sum = 0;
        for (int i = last - 1; i >= 0; i--) {
            low = Math.min(edge[i], path.passingMm(new Point(stations[i + 1], low), stations[i]));
            high = Math.max(spine[i], path.passingMm(new Point(stations[i + 1], high), stations[i]));
            sum += high - low - (spine[i] - edge[i]);
        }
        return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum / last;
    }
}
