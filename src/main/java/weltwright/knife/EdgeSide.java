package weltwright.knife;

/**
 * On which side of an outline the cutting edge is likely to be, told by what makers do to the two sides:
 *
 * <ul>
 *   <li>where the edge begins there is a notch, a step or a finger's rest; the spine runs through smoothly;
 *   <li>a handle is shaped for the fingers, which lie on the edge side, more than for the palm;
 *   <li>the edge rises to the tip in a belly; most spines run straighter;
 *   <li>so most tips lie nearer to the spine.
 * </ul>
 *
 * No one of these holds for all knives: a sheepsfoot's spine drops to a straight edge, a dagger's sides are alike. They are
 * weighed against each other. Common practice.
 */
final class EdgeSide {
    /** A notch is looked for this far to both sides of where the handle ends. */
    private static final double NOTCH_MM = 12;

    /** Notches that differ by less than this do not tell the sides apart; what goes beyond counts, up to the most. */
    private static final double TELLING_MM = 0.4;

    private static final double NOTCH_PER_MM = 1.6;
    private static final double NOTCH_MOST = 2;
    private static final double HANDLE_PER_MM = 0.4;
    private static final double HANDLE_MOST = 0.4;
    private static final double BELLY_PER_MM = 0.25;
    private static final double BELLY_MOST = 0.5;
    private static final double TIP_PER_WIDTH = 2.7;
    private static final double TIP_MOST = 0.4;

    /** Over this part of a blade its middle must run straight to the tip, to so much of its width, for its sides to be alike. */
    private static final double ALIKE_FROM = 0.05;

    private static final double ALIKE_TO = 0.95;
    private static final double ALIKE = 0.04;

    private final Sides sides;
    private final double buttX;
    private final double front;
    private final double tipX;

    /** @param front x at which the handle ends */
    EdgeSide(Sides sides, double buttX, double front, double tipX) {
        this.sides = sides;
        this.buttX = buttX;
        this.front = front;
        this.tipX = tipX;
    }

    /** What speaks for the upper side's being the edge, less what speaks for the lower one. */
    double evidence(double tipY) {
        double notch = notch(true) - notch(false);
        double telling = Math.signum(notch) * Math.max(0, Math.abs(notch) - TELLING_MM);
        double handle = (front - buttX) * 0.1;
        double fingers = bow(true, buttX + handle, front - handle) - bow(false, buttX + handle, front - handle);
        double blade = tipX - front;
        double belly = bow(true, front + 0.05 * blade, front + 0.9 * blade)
                - bow(false, front + 0.05 * blade, front + 0.9 * blade);
        double third = front + 0.3 * blade;
        double tip = (sides.middle(third) - tipY) / sides.width(third);
        return weighed(telling, NOTCH_PER_MM, NOTCH_MOST)
                + weighed(fingers, HANDLE_PER_MM, HANDLE_MOST)
                + weighed(belly, BELLY_PER_MM, BELLY_MOST)
                + weighed(tip, TIP_PER_WIDTH, TIP_MOST);
    }

    /** Whether both sides of the blade are alike, so that it has two edges or might as well have. */
    boolean isAlike(double tipY) {
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

    private static double weighed(double difference, double weight, double most) {
        return Math.max(-most, Math.min(most, weight * difference));
    }

    /** How deep the outline falls inside the straight line over the handle's end; 0 where it does not. */
    private double notch(boolean above) {
        double deepest = 0;
        for (double reach = 4; reach <= NOTCH_MM; reach += 2) {
            double a = sides.outward(above, front - reach);
            double b = sides.outward(above, front + reach);
            for (double d = -reach; d <= reach; d += 0.5) {
                double straight = a + (b - a) * (d + reach) / (2 * reach);
                deepest = Math.max(deepest, straight - sides.outward(above, front + d));
            }
        }
        return deepest;
    }

    /** The farthest that a side departs from its chord. */
    private double bow(boolean above, double from, double to) {
        double a = sides.outward(above, from);
        double b = sides.outward(above, to);
        double most = 0;
        for (double x = from; x <= to; x += 0.5) {
            most = Math.max(most, Math.abs(sides.outward(above, x) - a - (b - a) * (x - from) / (to - from)));
        }
        return most;
    }
}
