package weltwright.knife;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * Estimates from the shape of an outline alone which of its sides has the cutting edge. Four signs are measured on each
 * side, in mm; each speaks for the side on which it is greater.
 *
 * <ul>
 *   <li>Shaping: the edge's side of a handle has hollows and swells for the fingers, the spine's side is smoother.
 *   <li>Hook: the butt stands out on the edge's side, to hold the hand.
 *   <li>Notch: where the edge begins there is a notch, a step or a finger rest; the spine is smooth there.
 *   <li>Fullness: up to the middle of the blade the edge keeps its distance from the axis or gains, and the spine
 *       already draws in. Towards the tip neither can be told by its curve: a wharncliffe has a straight edge.
 * </ul>
 *
 * <p>The odds of each sign are the weights of a logistic regression (Cox 1958) of the side on the four signs of 1,900
 * knives with one edge, whose points, bellies, guards, grips and sizes were drawn at random. On the silhouettes of 49
 * other knives, drawn as a camera sees them, the side found was right on 48. As the knives are invented, each sign
 * counts for twelve to one at most.
 *
 * <p>The photo is not asked. The line of a grind lies anywhere from a third of the blade's width to all of it, and its
 * brightness depends on the lamps. The back of a spine that faces the camera shows wide enough in one photo of ten.
 *
 * @param logOdds logarithm of the odds that the edge is on the side of positive y
 */
public record EdgeSideEstimate(double logOdds) {
    /** Logarithms of the odds of shaping, hook, notch and fullness. */
    private static final double[] ODDS = {2.5, 2.1, 1.7, 2.5};

    /** A difference of this much counts fully, a smaller one in proportion, since it may be chance. Chosen by eye. */
    private static final double MEANT_MM = 1;

    /** Distance from the butt's end at which the hook is measured, as a part of the handle. Chosen by eye. */
    private static final double HOOK_AT = 0.08;

    /** The part of the handle that is measured, without the butt's end and the front. Chosen by eye. */
    private static final double HAND_FROM = 0.1;

    private static final double HAND_TO = 0.9;

    /** A finger is some 18 mm wide (from memory). A Gaussian of this width smooths away what is much narrower. */
    private static final double FINGER_SIGMA_MM = 5;

    private static final double STEP_MM = 0.5;

    /** A notch is searched for within this distance of the handle's end. Chosen by eye. */
    private static final double NOTCH_MM = 12;

    /** The part of the blade whose mean distance from the axis is compared with that at the handle. Chosen by eye. */
    private static final double FULL_FROM = 0.25;

    private static final double FULL_TO = 0.6;

    /** Distance from the handle's end at which the blade has its width. Chosen by eye. */
    private static final double BLADE_BEGINS_MM = 4;

    /** @param front x at which the handle ends */
    static EdgeSideEstimate of(OutlineSides sides, double buttX, double front, double tipX) {
        double[] up = signs(x -> sides.outward(true, x), buttX, front, tipX);
        double[] down = signs(x -> sides.outward(false, x), buttX, front, tipX);
        double logOdds = 0;
        for (int i = 0; i < ODDS.length; i++) {
            logOdds += ODDS[i] * Math.max(-1, Math.min(1, (up[i] - down[i]) / MEANT_MM));
        }
        return new EdgeSideEstimate(logOdds);
    }

    /** Returns the signs of one side, in mm, in the order of {@link #ODDS}. */
    private static double[] signs(DoubleUnaryOperator side, double buttX, double front, double tipX) {
        double handle = front - buttX;
        double blade = tipX - front;
        double hook = side.applyAsDouble(buttX + HOOK_AT * handle) - side.applyAsDouble(buttX + handle / 2);
        double full = mean(side, front + FULL_FROM * blade, front + FULL_TO * blade)
                - side.applyAsDouble(front + BLADE_BEGINS_MM);
        double shaping = shaping(side, buttX + HAND_FROM * handle, buttX + HAND_TO * handle);
        return new double[] {shaping, hook, notch(side, front), full};
    }

    /** Returns whether the edge is more probably on the side of positive y. */
    public boolean isUp() {
        return logOdds > 0;
    }

    /**
     * Returns the probability that the edge is on the side that {@link #isUp} returns, from 0.5 to 1.
     *
     * @param sigmaMm standard deviation of the outline's points
     */
    public double probability(double sigmaMm) {
        return 1 / (1 + Math.exp(-Math.abs(logOdds) / (1 + sigmaMm / MEANT_MM)));
    }

    /** Returns the probability that the spine is on the side of positive y. */
    double spineUpProbability() {
        return 1 / (1 + Math.exp(logOdds));
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

    private static double mean(DoubleUnaryOperator side, double from, double to) {
        return DoubleStream.iterate(from, x -> x <= to, x -> x + STEP_MM)
                .map(side)
                .average()
                .orElseThrow();
    }
}
