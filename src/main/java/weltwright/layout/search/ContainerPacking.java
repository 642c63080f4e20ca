package weltwright.layout.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Places as many groups of shapes as it finds room for in a box with fixed shapes in it.
 *
 * <p>Groups are added one by one. The shapes of a new group are put where they overlap least, the largest first, and
 * all are separated. Where that fails, two large shapes are exchanged and it is tried again, until the budget is used
 * up.
 */
public final class ContainerPacking {
    /** Passes without progress that make a strike, and strikes that make a failure. */
    private static final int PATIENCE = 60;

    private static final int STRIKES = 2;

    private final double length;
    private final double height;
    private final List<FixedShape> fixed;
    private final SplittableRandom random;

    /** A box from (0, 0) to (length, height). */
    public ContainerPacking(double length, double height, List<FixedShape> fixed, long seed) {
        this.length = length;
        this.height = height;
        this.fixed = List.copyOf(fixed);
        random = new SplittableRandom(seed);
    }

    /**
     * Groups in the box.
     *
     * @param groups their number
     * @param layout of their shapes, group by group
     */
    public record Filling(int groups, Layout layout) {}

    /**
     * Adds groups until one does not fit.
     *
     * @param group the shapes of each group, by its number from 0
     * @param most groups
     * @param improved told of each group that was added
     */
    public Filling fill(IntFunction<List<SearchItem>> group, int most, Budget budget, Consumer<Filling> improved) {
        List<SearchItem> items = new ArrayList<>();
        Filling filling = new Filling(0, new Arrangement(items, fixed, length, height).save());
        while (filling.groups < most && budget.used() < 1) {
            items.addAll(group.apply(filling.groups));
            if (!items.stream().allMatch(this::fits)) {
                return filling;
            }
            Arrangement arrangement = new Arrangement(items, fixed, length, height);
            insert(arrangement, filling.layout);
            if (!separate(arrangement, budget)) {
                return filling;
            }
            filling = new Filling(filling.groups + 1, arrangement.save());
            improved.accept(filling);
        }
        return filling;
    }

    private boolean fits(SearchItem item) {
        return item.narrowest(height).filter(shape -> shape.width() <= length).isPresent();
    }

    /** Takes over the shapes of a layout, and places the others, the largest first. */
    private void insert(Arrangement arrangement, Layout layout) {
        for (int i = 0; i < layout.size(); i++) {
            arrangement.place(i, layout.shape(i), layout.x(i), layout.y(i));
        }
        PlaceSearch search = new PlaceSearch(arrangement, random.split());
        IntStream.range(layout.size(), arrangement.movable)
                .boxed()
                .sorted(Comparator.comparingDouble(
                        i -> -arrangement.items.get(i).shape().hullArea()))
                .forEach(i -> {
                    var shape = arrangement.shapes[i];
                    arrangement.place(i, shape, arrangement.clampX(shape, 0), arrangement.clampY(shape, 0));
                    search.move(i);
                });
    }

    private boolean separate(Arrangement arrangement, Budget budget) {
        FailedLayouts failures = new FailedLayouts(arrangement.items, random);
        try (Separation separation = new Separation(arrangement, fixed, random.split())) {
            while (true) {
                double left = separation.separate(PATIENCE, STRIKES, budget, 1);
                if (left == 0) {
                    return true;
                }
                if (budget.used() >= 1) {
                    return false;
                }
                failures.add(arrangement.save(), left);
                failures.restart(arrangement);
            }
        }
    }
}
