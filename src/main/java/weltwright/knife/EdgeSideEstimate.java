package weltwright.knife;

import java.util.function.DoubleUnaryOperator;

/**
 * What an outline says of the side on which its cutting edge is, by what makers do to the two sides. Three signs are
 * measured on both, in mm; kept is by how much each is greater on the side of positive y.
 *
 * <ul>
 *   <li>A handle is shaped for the fingers, which close round it from the edge side, in hollows and swells; the palm's
 *       side runs through more quietly.
 *   <li>Where the edge begins there is a notch, a step or a finger's rest; the spine runs through smoothly.
 *   <li>The edge rises to the tip in a belly; most spines run straighter.
 * </ul>
 *
 * <p>No one of these holds for all knives: a wharncliffe's edge is straight and its spine bellied. Of the twelve knives
 * with one edge whose true outlines come with the project's photos and scenes, shaping is greater on the edge's side on
 * all twelve, the notch on ten, the belly on nine. From so few follows no more than Laplace's rule of succession
 * allows: a sign that held n times and failed m times will hold the next time with odds of n + 1 to m + 1. Signs are
 * taken to be independent.
 *
 * <p>The grind, which would tell, is not looked for. Of these twelve a line of it is to be seen on three, half to three
 * quarters of the way from the edge to the spine; on others it lies next to the edge (common practice). So it does not
 * tell by its place which side it belongs to, and by its brightness only to who knows the lamps.
 *
 * @param shapingMm how much more the handle turns to and fro, as the height of a single bow that turns as much
 * @param notchMm how much deeper the outline falls in where the handle ends
 * @param bellyMm how much farther the blade departs from its chord
 * @param alike whether both sides of the blade are alike, so that it has two edges or might as well have
 */
public record EdgeSideEstimate(double shapingMm, double notchMm, double bellyMm, boolean alike) {
    private static final double SHAPING_ODDS = Math.log(13.0 / 1);
    private static final double NOTCH_ODDS = Math.log(11.0 / 3);
    private static final double BELLY_ODDS = Math.log(10.0 / 4);

    /** A difference that makers mean is seen by eye; one of less than this may be chance, and counts for its part. */
    private static final double MEANT_MM = 1;

    /** Of the handle, what the hand closes round: neither the butt's end nor the front. */
    private static final double HAND_FROM = 0.1;

    private static final double HAND_TO = 0.9;

    /** A finger is some 18 mm wide. What is much narrower is not made for one: smoothed away by a Gaussian so wide. */
    private static final double FINGER_SIGMA_MM = 5;

    private static final double STEP_MM = 0.5;

    /** A notch is looked for this far to both sides of where the handle ends. */
    private static final double NOTCH_MM = 12;

    /** Of the blade, from the plunge to where both sides bend to the tip. */
    private static final double BELLY_FROM = 0.05;

    private static final double BELLY_TO = 0.9;

    /**
     * Sides are alike where, over this part of a blade, its middle runs straight to the tip, to so much of its width.
     */
    private static final double ALIKE_FROM = 0.05;

    private static final double ALIKE_TO = 0.95;
    private static final double ALIKE = 0.04;

    /**
     * @param front x at which the handle ends
     * @param tipY how high the tip, at {@code tipX}, lies
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

    /** What both say: of each sign the lesser, or nothing where they contradict each other. */
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

    /** Whether more speaks for the side of positive y than for the other. */
    public boolean isUp() {
        return logOdds(0) > 0;
    }

    /**
     * How probable it is that the edge is on the side that {@link #isUp} says, from 0.5 to 1; 1 where both are alike.
     *
     * @param sigmaMm standard deviation of the outline's points
     */
    public double sure(double sigmaMm) {
        double odds = isUp() ? logOdds(sigmaMm) : -logOdds(sigmaMm);
        return alike ? 1 : Math.max(0.5, 1 / (1 + Math.exp(-odds)));
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
     * The sum of all turns of a side, whichever way, less what is narrower than a finger. An arc that turns by an angle
     * over a length is that times an eighth of the length high.
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

    /** The Gaussian mean of a side; beyond both ends it is taken to go on as its own image, turned about the end. */
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

    /** How deep a side falls inside the straight line over the handle's end; 0 where it does not. */
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

    /** The farthest that a side departs from its chord. */
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
