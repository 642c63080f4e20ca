package weltwright.layout.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import weltwright.layout.collision.TurnedShape;

/**
 * Layouts of one length that could not be separated. The search goes on from one of them, the less overlap it has the
 * more often, after two of its large shapes have been exchanged. After Gardeyn and Wauters 2025.
 */
final class FailedLayouts {
    /** Large shapes are the largest that make up this part of the area of all hulls. */
    private static final double LARGE_SHARE = 0.75;

    /** Standard deviation of the normal distribution by whose absolute value a layout is drawn from 0, best, to 1. */
    private static final double SPREAD = 0.25;

    private record Failure(Layout layout, double overlap) {}

    private final List<SearchItem> items;
    private final SplittableRandom random;
    private final List<Failure> failures = new ArrayList<>();
    private final int[] byHull;
    private final int large;

    FailedLayouts(List<SearchItem> items, SplittableRandom random) {
        this.items = items;
        this.random = random;
        byHull = IntStream.range(0, items.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -items.get(i).shape().hullArea()))
                .mapToInt(i -> i)
                .toArray();
        double total = items.stream().mapToDouble(i -> i.shape().hullArea()).sum();
        int count = 0;
        for (double sum = 0; count < byHull.length && sum <= LARGE_SHARE * total; count++) {
            sum += items.get(byHull[count]).shape().hullArea();
        }
        large = count;
    }

    void clear() {
        failures.clear();
    }

    void add(Layout layout, double overlap) {
        failures.add(new Failure(layout, overlap));
        failures.sort(Comparator.comparingDouble(Failure::overlap));
    }

    /** Takes up one of the layouts, of which there must be one, with two shapes exchanged and weights forgotten. */
    void restart(Arrangement arrangement) {
        double drawn = Math.min(0.999, Math.abs(gaussian()) * SPREAD);
        arrangement.restore(failures.get((int) (drawn * failures.size())).layout);
        arrangement.resetWeights();
        if (items.size() > 1) {
            exchangeTwo(arrangement);
        }
    }

    /** By Box and Muller's transformation. */
    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    /** Exchanges two large shapes of different kinds, and takes along what lies under them. */
    private void exchangeTwo(Arrangement arrangement) {
        int n = items.size();
        int a = byHull[random.nextInt(large)];
        List<Integer> others = new ArrayList<>();
        for (int k = 0; k < large; k++) {
            if (items.get(byHull[k]) != items.get(a)) {
                others.add(byHull[k]);
            }
        }
        int b = others.isEmpty() ? (a + 1 + random.nextInt(n - 1)) % n : others.get(random.nextInt(others.size()));
        double ax = arrangement.x[a];
        double ay = arrangement.y[a];
        double bx = arrangement.x[b];
        double by = arrangement.y[b];
        double turnA = arrangement.shapes[a].turnRad();
        double turnB = arrangement.shapes[b].turnRad();
        put(arrangement, a, turnB, bx, by);
        put(arrangement, b, turnA, ax, ay);
        carry(arrangement, a, b, ax - bx, ay - by);
        carry(arrangement, b, a, bx - ax, by - ay);
    }

    private static void put(Arrangement arrangement, int i, double turn, double x, double y) {
        TurnedShape turned = arrangement.items.get(i).at(turn);
        TurnedShape shape = arrangement.fits(turned) ? turned : arrangement.shapes[i];
        arrangement.place(i, shape, arrangement.clampX(shape, x), arrangement.clampY(shape, y));
    }

    /** Moves what a shape has come to lie on to where that shape was. */
    private static void carry(Arrangement arrangement, int moved, int exchanged, double dx, double dy) {
        double half = arrangement.shapes[moved].shape().area() / 2;
        for (int i = 0; i < arrangement.movable; i++) {
            TurnedShape shape = arrangement.shapes[i];
            if (i != moved
                    && i != exchanged
                    && shape.shape().area() < half
                    && arrangement.overlaps[moved * arrangement.count + i] > 0
                    && arrangement.x[i] > arrangement.minX[moved]
                    && arrangement.x[i] < arrangement.maxX[moved]
                    && arrangement.y[i] > arrangement.minY[moved]
                    && arrangement.y[i] < arrangement.maxY[moved]) {
                arrangement.place(
                        i,
                        shape,
                        arrangement.clampX(shape, arrangement.x[i] + dx),
                        arrangement.clampY(shape, arrangement.y[i] + dy));
            }
        }
    }
}
