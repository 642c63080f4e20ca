package weltwright.layout.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import weltwright.layout.collision.TurnedShape;

/**
 * Places shapes in a strip of given height so that its length is small.
 *
 * <p>Steps:
 *
 * <ol>
 *   <li>Shapes are placed one by one, the largest first, each as far left as random tries find.
 *   <li>Exploration, in four fifths of the budget: the strip is shortened and the overlaps that arise are separated.
 *       Where that fails, two large shapes of one of the best failures are exchanged, and it goes on from there.
 *   <li>Compression: the shortest layout is shortened at random places by ever smaller steps.
 * </ol>
 *
 * <p>After Gardeyn and Wauters, "An open-source heuristic to reboot 2D nesting research" (2025), which continues
 * Imamichi, Yagiura and Nagamochi, "An iterated local search algorithm based on nonlinear programming for the irregular
 * strip packing problem" (2009), and Elkeran, "A new approach for sheet nesting problem using guided cuckoo search and
 * pairwise clustering" (2013).
 */
public final class StripPacking {
    /** Part of the budget after which compression begins. */
    private static final double EXPLORATION = 0.8;

    /** The strip is shortened by the first part of its length; after a failure by half as much, down to the last. */
    private static final double FIRST_STEP = 0.02;

    private static final double LAST_STEP = 0.001;

    /** First and last steps of compression. */
    private static final double COMPRESS_FROM = 0.002;

    private static final double COMPRESS_TO = 0.00005;

    /** Passes without progress that make a strike, and strikes that make a failure. */
    private static final int EXPLORE_PATIENCE = 100;

    private static final int COMPRESS_PATIENCE = 50;
    private static final int STRIKES = 2;

    /** Large shapes are the largest that make up this part of the area of all hulls. After Gardeyn and Wauters 2025. */
    private static final double LARGE_SHARE = 0.75;

    /** Spread with which one of the failures is drawn, the best most often. After Gardeyn and Wauters 2025. */
    private static final double FAILURE_SPREAD = 0.25;

    private final List<SearchItem> items;
    private final double height;
    private final SplittableRandom random;

    /**
     * @param items shapes to place; each must fit into the height at one of its turns
     * @param height of the strip
     */
    public StripPacking(List<SearchItem> items, double height, long seed) {
        this.items = List.copyOf(items);
        this.height = height;
        random = new SplittableRandom(seed);
    }

    /**
     * Searches until the budget is used up.
     *
     * @param improved told each better layout
     * @return the shortest layout found
     */
    public Layout search(Budget budget, Consumer<Layout> improved) {
        Arrangement arrangement = InitialLayout.construct(items, height, random.split());
        try (Separation separation = new Separation(arrangement, List.of(), random.split())) {
            Layout best = arrangement.save();
            improved.accept(best);
            best = explore(arrangement, separation, best, budget, improved);
            return compress(arrangement, separation, best, budget, improved);
        }
    }

    private record Failure(Layout layout, double overlap) {}

    private Layout explore(
            Arrangement arrangement, Separation separation, Layout first, Budget budget, Consumer<Layout> improved) {
        Layout best = first;
        double step = FIRST_STEP;
        List<Failure> failures = new ArrayList<>();
        boolean shorter = shorten(arrangement, best, step, arrangement.length / 2);
        while (shorter && budget.used() < EXPLORATION) {
            double left = separation.separate(EXPLORE_PATIENCE, STRIKES, budget, EXPLORATION);
            if (left == 0) {
                best = arrangement.save();
                improved.accept(best);
                failures.clear();
                shorter = shorten(arrangement, best, step, arrangement.length / 2);
            } else if (step > LAST_STEP) {
                step = Math.max(LAST_STEP, step / 2);
                arrangement.restore(best);
                shorter = shorten(arrangement, best, step, arrangement.length / 2);
            } else {
                failures.add(new Failure(arrangement.save(), left));
                failures.sort(Comparator.comparingDouble(Failure::overlap));
                double drawn = Math.min(0.999, Math.abs(gaussian()) * FAILURE_SPREAD);
                arrangement.restore(failures.get((int) (drawn * failures.size())).layout);
                arrangement.resetWeights();
                exchangeTwo(arrangement);
            }
        }
        return best;
    }

    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    /** Returns false, and does nothing, where it is as short already as its widest shape allows. */
    private static boolean shorten(Arrangement arrangement, Layout from, double step, double splitX) {
        double least = arrangement.leastLength();
        if (from.length() <= least) {
            return false;
        }
        arrangement.changeLength(Math.max(least, from.length() * (1 - step)), splitX);
        arrangement.resetWeights();
        return true;
    }

    /** Exchanges two large shapes of different kinds, and takes along what lies under them. */
    private void exchangeTwo(Arrangement arrangement) {
        int n = arrangement.movable;
        if (n < 2) {
            return;
        }
        int[] byHull = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -items.get(i).shape().hullArea()))
                .mapToInt(i -> i)
                .toArray();
        double total = items.stream().mapToDouble(i -> i.shape().hullArea()).sum();
        int large = 0;
        for (double sum = 0; large < n && sum <= LARGE_SHARE * total; large++) {
            sum += items.get(byHull[large]).shape().hullArea();
        }
        int a = byHull[random.nextInt(Math.max(1, large))];
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
        put(arrangement, a, arrangement.shapes[b].turnRad(), bx, by, arrangement.shapes[a].turnRad());
        put(arrangement, b, arrangement.shapes[a].turnRad(), ax, ay, arrangement.shapes[b].turnRad());
        carry(arrangement, a, b, ax - bx, ay - by);
        carry(arrangement, b, a, bx - ax, by - ay);
    }

    /** Moves what a shape has come to lie on to where that shape was. */
    private static void carry(Arrangement arrangement, int moved, int exchanged, double dx, double dy) {
        for (int i = 0; i < arrangement.movable; i++) {
            if (i != moved
                    && i != exchanged
                    && arrangement.overlaps[moved * arrangement.count + i] > 0
                    && arrangement.x[i] > arrangement.minX[moved]
                    && arrangement.x[i] < arrangement.maxX[moved]
                    && arrangement.y[i] > arrangement.minY[moved]
                    && arrangement.y[i] < arrangement.maxY[moved]
                    && arrangement.shapes[i].shape().area()
                            < 0.5 * arrangement.shapes[moved].shape().area()) {
                TurnedShape shape = arrangement.shapes[i];
                arrangement.place(
                        i,
                        shape,
                        arrangement.clampX(shape, arrangement.x[i] + dx),
                        arrangement.clampY(shape, arrangement.y[i] + dy));
            }
        }
    }

    private static void put(Arrangement arrangement, int i, double turn, double x, double y, double otherwise) {
        TurnedShape shape = arrangement.items.get(i).at(turn);
        if (!arrangement.fits(shape)) {
            shape = arrangement.items.get(i).at(otherwise);
        }
        arrangement.place(i, shape, arrangement.clampX(shape, x), arrangement.clampY(shape, y));
    }

    private Layout compress(
            Arrangement arrangement, Separation separation, Layout first, Budget budget, Consumer<Layout> improved) {
        Layout best = first;
        double start = budget.used();
        while (budget.used() < 1) {
            double done = (budget.used() - start) / (1 - start);
            double step = COMPRESS_FROM * Math.pow(COMPRESS_TO / COMPRESS_FROM, done);
            arrangement.restore(best);
            if (!shorten(arrangement, best, step, random.nextDouble() * arrangement.length)) {
                return best;
            }
            if (separation.separate(COMPRESS_PATIENCE, STRIKES, budget, 1) == 0) {
                best = arrangement.save();
                improved.accept(best);
            }
        }
        return best;
    }
}
