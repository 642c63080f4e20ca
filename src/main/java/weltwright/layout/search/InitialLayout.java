package weltwright.layout.search;

import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import weltwright.layout.collision.TurnedShape;

/** Places shapes one by one in a strip, the largest first, each without overlap as far left as random tries find. */
final class InitialLayout {
    /** Random tries for each shape, of which the best is pushed on. Chosen by eye. */
    private static final int TRIES = 500;

    /** Steps of the push, as parts of the shape's lesser size. */
    private static final double FIRST_STEP = 0.5;

    private static final double LAST_STEP = 0.005;

    private InitialLayout() {}

    /** The arrangement, whose length is that of the strip used. */
    static Arrangement construct(
            List<SearchItem> items, List<FixedShape> fixed, double height, SplittableRandom random) {
        Arrangement arrangement = new Arrangement(items, fixed, Double.MAX_VALUE, height);
        double used = 0;
        int[] order = IntStream.range(0, items.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> {
                    SearchItem item = items.get(i);
                    return -item.shape().hullArea() * item.shape().diameter();
                }))
                .mapToInt(i -> i)
                .toArray();
        for (int i : order) {
            place(arrangement, i, used, random);
            used = Math.max(used, arrangement.maxX[i]);
        }
        arrangement.length = used;
        return arrangement;
    }

    private static void place(Arrangement arrangement, int i, double used, SplittableRandom random) {
        SearchItem item = arrangement.items.get(i);
        TurnedShape best = arrangement.shapes[i];
        double bestX = used - best.minX();
        double bestY = arrangement.clampY(best, 0);
        double bestRight = right(best, bestX, bestY);
        for (int k = 0; k < TRIES; k++) {
            TurnedShape shape = item.turns().discrete()
                    ? item.atCentres().get(random.nextInt(item.atCentres().size()))
                    : item.at(item.turns().random(random));
            if (!arrangement.fits(shape)) {
                continue;
            }
            double x = -shape.minX() + random.nextDouble() * used;
            double y = -shape.minY() + random.nextDouble() * (arrangement.height - shape.height());
            if (right(shape, x, y) < bestRight && free(arrangement, i, shape, x, y)) {
                best = shape;
                bestX = x;
                bestY = y;
                bestRight = right(shape, x, y);
            }
        }
        double size = Math.min(best.width(), best.height());
        for (double step = FIRST_STEP * size; step > LAST_STEP * size; ) {
            double left = arrangement.clampX(best, bestX - step);
            double down = arrangement.clampY(best, bestY - step);
            if (left < bestX && free(arrangement, i, best, left, bestY)) {
                bestX = left;
            } else if (down < bestY && free(arrangement, i, best, bestX, down)) {
                bestY = down;
            } else {
                step /= 2;
            }
        }
        arrangement.place(i, best, bestX, bestY);
    }

    /** The right end of a shape, with a little weight on its height in the strip. */
    private static double right(TurnedShape shape, double x, double y) {
        return x + shape.maxX() + 0.1 * (y + shape.minY());
    }

    private static boolean free(Arrangement arrangement, int i, TurnedShape shape, double x, double y) {
        return arrangement.overlapAt(i, shape, x, y, Double.MIN_VALUE) == 0;
    }
}
