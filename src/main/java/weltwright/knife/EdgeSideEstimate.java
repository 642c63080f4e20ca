package weltwright.knife;

import java.util.function.DoubleUnaryOperator;

/**
 * Estimates from the shape of an outline alone which of its sides has the cutting edge. Three measures are taken of
 * each side, in mm; the record holds by how much each is greater on the side of positive y.
 *
 * <ul>
 *   <li>Shaping: the edge's side of a handle has hollows and swells for the fingers, the spine's side is smoother.
 *   <li>Notch: where the edge begins there is a notch, a step or a finger rest; the spine is smooth there.
 *   <li>Belly: the edge curves to the tip; most spines are straighter.
 * </ul>
 *
 * <p>None of these holds for all knives: a wharncliffe has a straight edge and a curved spine. Of the twelve knives
 * with one edge whose true outlines come with the project's photos and scenes, shaping is greater on the edge's side on
 * all twelve, the notch on ten, the belly on nine. The odds follow by Laplace's rule of succession: a sign that held n
 * times and failed m times holds the next time with odds of n + 1 to m + 1. Signs are taken to be independent.
 *
 * <p>The grind is not used. Its line is visible on three of these twelve, half to three quarters of the way from the
 * edge to the spine; on others it lies next to the edge (common practice). So its place does not show which side it
 * belongs to, and its brightness depends on the lamps.
 *
 * @param shapingMm difference of the total turn of the handle's side, as the height of a single arc that turns as much
 * @param notchMm difference of the depth of the notch where the handle ends
 * @param bellyMm difference of the greatest distance of the blade's side from its chord
 * @param alike whether both sides of the blade are mirror images, so that it makes no difference which has the edge
 */
public record EdgeSideEstimate(double shapingMm, double notchMm, double bellyMm, boolean alike) {
    private static final double SHAPING_ODDS = Math.log(13.0 / 1);
    private static final double NOTCH_ODDS = Math.log(11.0 / 3);
    private static final double BELLY_ODDS = Math.log(10.0 / 4);

    /** A difference of this much counts fully, a smaller one in proportion, since it may be chance. Chosen by eye. */
    private static final double MEANT_MM = 1;

    /** The part of the handle that is measured, without the butt's end and the front. Chosen by eye. */
    private static final double HAND_FROM = 0.1;

    private static final double HAND_TO = 0.9;

    /** A finger is some 18 mm wide (from memory). A Gaussian of this width smooths away what is much narrower. */
    private static final double FINGER_SIGMA_MM = 5;

    private static final double STEP_MM = 0.5;

    /** A notch is searched for within this distance of the handle's end. Chosen by eye. */
    private static final double NOTCH_MM = 12;

    /** The part of the blade that is measured, up to where both sides curve to the tip. Chosen by eye. */
    private static final double BELLY_FROM = 0.05;

    private static final double BELLY_TO = 0.9;

    /**
     * Sides are alike where, over this part of the blade, its middle line is straight to within this share of its
     * width. Chosen by eye.
     */
    private static final double ALIKE_FROM = 0.05;

    private static final double ALIKE_TO = 0.95;
    private static final double ALIKE = 0.04;

    /**
     * @param front x at which the handle ends
     * @param tipY y of the tip, which is at {@code tipX}
     */
    static EdgeSideEstimate of(OutlineSides sides, double buttX, double front, double tipX, double tipY) {
        double handle = front - buttX;
        double blade = tipX - front;
        double handFrom = buttX + HAND_FROM * handle;
        double handTo = buttX + HAND_TO * handle;
        DoubleUnaryOperator up = x -> sides.outward(true, x);
        DoubleUnaryOperator down = x -> sides.outward(false, x);
        return new EdgeSideEstimate(
                shaping(up, handFrom, handTo) - shaping(down, handFrom, handTo),
                notch(up, front) - notch(down, front),
                bow(up, front + BELLY_FROM * blade, front + BELLY_TO * blade)
                        - bow(down, front + BELLY_FROM * blade, front + BELLY_TO * blade),
                isAlike(sides, front, tipX, tipY));
    }

    /** Combines two estimates: of each measure the smaller, or 0 where they disagree in sign. */
    EdgeSideEstimate agreeingWith(EdgeSideEstimate other) {
        return new EdgeSideEstimate(
                agreed(shapingMm, other.shapingMm),
                agreed(notchMm, other.notchMm),
                agreed(bellyMm, other.bellyMm),
                alike && other.alike);
    }

    private static double agreed(double a, double b) {
        return a * b <= 0 ? 0 : Math.abs(a) < Math.abs(b) ? a : b;
    }

    /** Returns whether the edge is more probably on the side of positive y. */
    public boolean isUp() {
        return logOdds(0) > 0;
    }

    /**
     * Returns the probability that the edge is on the side that {@link #isUp} returns, from 0.5 to 1; 1 where both are
     * alike.
     *
     * @param sigmaMm standard deviation of the outline's points
     */
    public double probability(double sigmaMm) {
        double odds = isUp() ? logOdds(sigmaMm) : -logOdds(sigmaMm);
        return alike ? 1 : Math.max(0.5, 1 / (1 + Math.exp(-odds)));
    }

    /** Returns the probability that the spine is on the side of positive y. */
    double spineUpProbability() {
        return 1 / (1 + Math.exp(logOdds(0)));
    }

    private double logOdds(double sigmaMm) {
        double full = MEANT_MM + sigmaMm;
        return SHAPING_ODDS * part(shapingMm / full)
                + NOTCH_ODDS * part(notchMm / full)
                + BELLY_ODDS * part(bellyMm / full);
    }

    private static double part(double difference) {
        return Math.max(-1, Math.min(1, difference));
    }

    /**
     * Returns the total absolute turn of a smoothed side, as a height: an arc that turns by an angle over a length is
     * angle · length / 8 high.
     */
    private static double shaping(DoubleUnaryOperator side, double from, double to) {
        double turns = 0;
        double last = Double.NaN;
        for (double x = from; x + STEP_MM <= to; x += STEP_MM) {
            double slope = Math.atan((smoothed(side, from, to, x + STEP_MM) - smoothed(side, from, to, x)) / STEP_MM);
            turns += Double.isNaN(last) ? 0 : Math.abs(slope - last);
            last = slope;
        }
        return turns * (to - from) / 8;
    }

    /** Returns the Gaussian mean of a side, continued beyond both ends by point reflection in the end. */
    private static double smoothed(DoubleUnaryOperator side, double from, double to, double x) {
        double sum = 0;
        double weights = 0;
        for (double off = -4 * FINGER_SIGMA_MM; off <= 4 * FINGER_SIGMA_MM; off += STEP_MM) {
            double weight = Math.exp(-off * off / (2 * FINGER_SIGMA_MM * FINGER_SIGMA_MM));
            double end = Math.max(from, Math.min(to, x + off));
            double beyond = x + off - end;
            double y = side.applyAsDouble(end);
            sum += weight * (beyond == 0 ? y : 2 * y - side.applyAsDouble(end - beyond));
            weights += weight;
        }
        return sum / weights;
    }

    /**
     * Returns the greatest depth of a side below a chord across the handle's end; 0 where it lies above all of them.
     */
    private static double notch(DoubleUnaryOperator side, double front) {
        double deepest = 0;
        for (double reach = 4; reach <= NOTCH_MM; reach += 2) {
            double a = side.applyAsDouble(front - reach);
            double b = side.applyAsDouble(front + reach);
            for (double d = -reach; d <= reach; d += STEP_MM) {
                double straight = a + (b - a) * (d + reach) / (2 * reach);
                deepest = Math.max(deepest, straight - side.applyAsDouble(front + d));
            }
        }
        return deepest;
    }

    /** Returns the greatest distance of a side from its chord. */
    private static double bow(DoubleUnaryOperator side, double from, double to) {
        double a = side.applyAsDouble(from);
        double b = side.applyAsDouble(to);
        double most = 0;
        for (double x = from; x <= to; x += STEP_MM) {
            most = Math.max(most, Math.abs(side.applyAsDouble(x) - a - (b - a) * (x - from) / (to - from)));
        }
        return most;
    }

    private static boolean isAlike(OutlineSides sides, double front, double tipX, double tipY) {
        double blade = tipX - front;
        double widest = 0;
        double most = 0;
        double middle = sides.middle(front + ALIKE_FROM * blade);
        for (double part = ALIKE_FROM; part <= ALIKE_TO; part += 0.01) {
            double x = front + part * blade;
            double straight = middle + (tipY - middle) * (part - ALIKE_FROM) / (1 - ALIKE_FROM);
            most = Math.max(most, Math.abs(sides.middle(x) - straight));
            widest = Math.max(widest, sides.width(x));
        }
        return most < ALIKE * widest;
    }
}
