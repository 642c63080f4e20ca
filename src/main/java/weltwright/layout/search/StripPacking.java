package weltwright.layout.search;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;

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

    private final List<SearchItem> items;
    private final List<FixedShape> fixed;
    private final double height;
    private final SplittableRandom random;

    /**
     * @param items shapes to place; each must fit into the height at one of its turns
     * @param height of the strip
     */
    public StripPacking(List<SearchItem> items, double height, long seed) {
        this(items, List.of(), height, seed);
    }

    /** @param fixed shapes that stay where they are, such as flaws of the strip */
    public StripPacking(List<SearchItem> items, List<FixedShape> fixed, double height, long seed) {
        this.items = List.copyOf(items);
        this.fixed = List.copyOf(fixed);
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
        return search(InitialLayout.construct(items, fixed, height, random.split()), budget, improved);
    }

    /** Shortens a layout without overlap, as {@link #search(Budget, Consumer)} does its first one. */
    public Layout shorten(Layout first, Budget budget, Consumer<Layout> improved) {
        Arrangement arrangement = new Arrangement(items, fixed, first.length(), height);
        arrangement.restore(first);
        return search(arrangement, budget, improved);
    }

    private Layout search(Arrangement arrangement, Budget budget, Consumer<Layout> improved) {
        try (Separation separation = new Separation(arrangement, fixed, random.split())) {
            Layout best = arrangement.save();
            improved.accept(best);
            best = explore(arrangement, separation, best, budget, improved);
            return compress(arrangement, separation, best, budget, improved);
        }
    }

    private Layout explore(
            Arrangement arrangement, Separation separation, Layout first, Budget budget, Consumer<Layout> improved) {
        Layout best = first;
        double step = FIRST_STEP;
        FailedLayouts failures = new FailedLayouts(items, random);
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
                failures.add(arrangement.save(), left);
                failures.restart(arrangement);
            }
        }
        return best;
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
