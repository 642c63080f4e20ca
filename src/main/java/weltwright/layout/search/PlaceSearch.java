package weltwright.layout.search;

import java.util.SplittableRandom;
import weltwright.layout.collision.TurnedShape;

/**
 * Searches the place of least weighted overlap for one shape: tries places at random, some near its present one, and
 * refines the best few by a descent along the axes and diagonals. The method and its numbers follow Gardeyn and Wauters
 * 2025.
 */
final class PlaceSearch {
    /** Places tried near the present one, and in the whole box. */
    private static final int NEAR = 25;

    private static final int ANYWHERE = 50;

    /** The number of places that are refined. */
    private static final int REFINED = 3;

    /** Two places nearer to each other than this part of the shape's lesser size count as one. */
    private static final double DISTINCT_SHARE = 0.05;

    /** Two turns nearer than this count as one. */
    private static final double DISTINCT_TURN_RAD = Math.toRadians(1);

    /** First and last steps of both descents, as parts of the shape's lesser size, and in radians. */
    private static final double COARSE_FROM = 0.25;

    private static final double COARSE_TO = 0.02;
    private static final double FINE_FROM = 0.01;
    private static final double FINE_TO = 0.001;
    private static final double COARSE_TURN_FROM = Math.toRadians(5);
    private static final double COARSE_TURN_TO = Math.toRadians(1);
    private static final double FINE_TURN_FROM = Math.toRadians(0.5);
    private static final double FINE_TURN_TO = Math.toRadians(0.05);

    /** Factors on the step after one that lessened the overlap, and after one that did not. */
    private static final double ON_SUCCESS = 1.1;

    private static final double ON_FAILURE = 0.5;

    /** Spread of turns tried near the present one. Chosen by eye. */
    private static final double NEAR_TURN_RAD = Math.toRadians(10);

    private final Arrangement arrangement;
    private final SplittableRandom random;

    private int item;
    private double distinct;
    private int found;
    private final TurnedShape[] shapes = new TurnedShape[REFINED];
    private final double[] xs = new double[REFINED];
    private final double[] ys = new double[REFINED];
    private final double[] overlaps = new double[REFINED];

    private TurnedShape bestShape;
    private double bestX;
    private double bestY;
    private double bestOverlap;

    PlaceSearch(Arrangement arrangement, SplittableRandom random) {
        this.arrangement = arrangement;
        this.random = random;
        bestShape = arrangement.shapes[0];
    }

    /** Moves a shape to the best place found, which overlaps no more than the present one does by the weights. */
    void move(int i) {
        item = i;
        found = 0;
        TurnedShape now = arrangement.shapes[i];
        double size = Math.min(now.width(), now.height());
        distinct = DISTINCT_SHARE * size;
        offer(now, arrangement.x[i], arrangement.y[i]);
        for (int k = 0; k < NEAR && !free(); k++) {
            tryNear(now);
        }
        for (int k = 0; k < ANYWHERE && !free(); k++) {
            tryAnywhere();
        }
        if (!free()) {
            int starts = found;
            TurnedShape[] startShapes = shapes.clone();
            double[] startX = xs.clone();
            double[] startY = ys.clone();
            double[] startOverlaps = overlaps.clone();
            for (int k = 0; k < starts && !free(); k++) {
                start(startShapes[k], startX[k], startY[k], startOverlaps[k]);
                descend(size, COARSE_FROM, COARSE_TO, COARSE_TURN_FROM, COARSE_TURN_TO);
                insert(bestShape, bestX, bestY, bestOverlap);
            }
        }
        start(shapes[0], xs[0], ys[0], overlaps[0]);
        if (!free()) {
            descend(size, FINE_FROM, FINE_TO, FINE_TURN_FROM, FINE_TURN_TO);
        }
        arrangement.place(i, bestShape, bestX, bestY);
    }

    private boolean free() {
        return overlaps[0] == 0 && found > 0;
    }

    private void start(TurnedShape shape, double x, double y, double overlap) {
        bestShape = shape;
        bestX = x;
        bestY = y;
        bestOverlap = overlap;
    }

    private void tryNear(TurnedShape now) {
        SearchItem kind = arrangement.items.get(item);
        TurnedShape shape;
        if (kind.turns().discrete()) {
            shape = kind.atCentres().get(random.nextInt(kind.atCentres().size()));
        } else {
            shape = kind.at(now.turnRad() + (2 * random.nextDouble() - 1) * NEAR_TURN_RAD);
        }
        if (arrangement.fits(shape)) {
            double x = arrangement.x[item] + (random.nextDouble() - 0.5) * now.width();
            double y = arrangement.y[item] + (random.nextDouble() - 0.5) * now.height();
            offer(shape, arrangement.clampX(shape, x), arrangement.clampY(shape, y));
        }
    }

    private void tryAnywhere() {
        SearchItem kind = arrangement.items.get(item);
        TurnedShape shape = kind.turns().discrete()
                ? kind.atCentres().get(random.nextInt(kind.atCentres().size()))
                : kind.at(kind.turns().random(random));
        if (arrangement.fits(shape)) {
            double x = -shape.minX() + random.nextDouble() * (arrangement.length - shape.width());
            double y = -shape.minY() + random.nextDouble() * (arrangement.height - shape.height());
            offer(shape, x, y);
        }
    }

    private void offer(TurnedShape shape, double x, double y) {
        double bound = found < REFINED ? Double.POSITIVE_INFINITY : overlaps[REFINED - 1];
        double overlap = arrangement.overlapAt(item, shape, x, y, bound);
        if (overlap < bound) {
            insert(shape, x, y, overlap);
        }
    }

    /** Takes a place among the best, unless one like it is no worse; drops those like it that are worse. */
    private void insert(TurnedShape shape, double x, double y, double overlap) {
        int kept = 0;
        for (int k = 0; k < found; k++) {
            boolean alike = Math.abs(xs[k] - x) < distinct
                    && Math.abs(ys[k] - y) < distinct
                    && Math.abs(Math.IEEEremainder(shapes[k].turnRad() - shape.turnRad(), 2 * Math.PI))
                            < DISTINCT_TURN_RAD;
            if (alike && overlaps[k] <= overlap) {
                return;
            }
        }
        for (int k = 0; k < found; k++) {
            boolean alike = Math.abs(xs[k] - x) < distinct
                    && Math.abs(ys[k] - y) < distinct
                    && Math.abs(Math.IEEEremainder(shapes[k].turnRad() - shape.turnRad(), 2 * Math.PI))
                            < DISTINCT_TURN_RAD;
            if (!alike) {
                set(kept++, shapes[k], xs[k], ys[k], overlaps[k]);
            }
        }
        int at = Math.min(kept, REFINED - 1);
        while (at > 0 && overlaps[at - 1] > overlap) {
            set(at, shapes[at - 1], xs[at - 1], ys[at - 1], overlaps[at - 1]);
            at--;
        }
        set(at, shape, x, y, overlap);
        found = Math.min(kept + 1, REFINED);
    }

    private void set(int k, TurnedShape shape, double x, double y, double overlap) {
        shapes[k] = shape;
        xs[k] = x;
        ys[k] = y;
        overlaps[k] = overlap;
    }

    private void descend(double size, double from, double to, double turnFrom, double turnTo) {
        SearchItem kind = arrangement.items.get(item);
        boolean turnable = !kind.turns().discrete();
        double stepX = from * size;
        double stepY = from * size;
        double stepTurn = turnFrom;
        double last = to * size;
        int axis = random.nextInt(turnable ? 6 : 4);
        while (bestOverlap > 0 && (stepX >= last || stepY >= last || (turnable && stepTurn >= turnTo))) {
            double before = bestOverlap;
            double x = bestX;
            double y = bestY;
            if (axis >= 4) {
                double turn = bestShape.turnRad();
                tryDescent(kind.at(turn + stepTurn), x, y);
                tryDescent(kind.at(turn - stepTurn), x, y);
            } else {
                double dx = axis == 1 ? 0 : stepX;
                double dy = axis == 0 ? 0 : axis == 3 ? -stepY : stepY;
                tryDescent(bestShape, x + dx, y + dy);
                tryDescent(bestShape, x - dx, y - dy);
            }
            boolean better = bestOverlap < before;
            double factor = better ? ON_SUCCESS : ON_FAILURE;
            switch (axis) {
                case 0 -> stepX *= factor;
                case 1 -> stepY *= factor;
                case 2, 3 -> {
                    stepX *= Math.sqrt(factor);
                    stepY *= Math.sqrt(factor);
                }
                default -> stepTurn *= factor;
            }
            if (!better) {
                axis = random.nextInt(turnable ? 6 : 4);
            }
        }
    }

    private void tryDescent(TurnedShape shape, double px, double py) {
        if (!arrangement.fits(shape)) {
            return;
        }
        double x = arrangement.clampX(shape, px);
        double y = arrangement.clampY(shape, py);
        double overlap = arrangement.overlapAt(item, shape, x, y, bestOverlap);
        if (overlap < bestOverlap) {
            start(shape, x, y, overlap);
        }
    }
}
