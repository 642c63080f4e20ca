package weltwright.ground.ruled;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.ground.ruled.CrossingLattice.Cell;
import weltwright.ground.ruled.CrossingLattice.Expected;
import weltwright.image.InterpolatedChannel;

/**
 * Grows a lattice of crossings from a seed, neighbour by neighbour, over all of a ruled ground that shows.
 *
 * <p>Each new crossing is looked for where those already found near it say that it must be, so the growth follows
 * perspective, a lens that bends lines and a mat that is not quite flat, and never steps farther than one crossing: it
 * goes round a knife along unbroken lines, and cannot lose count of them. It ends where lines end.
 */
final class LatticeGrowth {
    /** A line this much weaker than those next to it is something else. */
    private static final double LEAST_CONTRAST = 0.4;

    /** Farther than this part of the pitch from where it must be, a crossing is another. */
    private static final double GREATEST_MISS = 0.14;

    /** A first patch has so many crossings to each side of its middle. */
    private static final int PATCH = 2;

    /** Of the 25 of the first patch. */
    private static final int FEWEST_TO_START = 5;

    /** What lines lead to needs three arms, since a knife may hide one; what only a guess says is there needs all. */
    private static final int ENOUGH_ARMS = 3;

    private static final int ALL_ARMS = 4;

    /** Narrower lines look as wide as this through any lens. */
    private static final double LEAST_WIDTH_PX = 1.5;

    /** Guesses at the lines' width, as a part of the way from line to line; chosen by eye. */
    private static final double[] WIDTH_PARTS = {0.03, 0.05, 0.08};

    private final InterpolatedChannel levels;
    private final CrossingLattice lattice = new CrossingLattice();
    private LineCrossingFinder finder;

    private LatticeGrowth(InterpolatedChannel levels, LineCrossingFinder finder) {
        this.levels = levels;
        this.finder = finder;
    }

    /** The lattice round a seed; without crossings where the seed is none. */
    static LatticeGrowth from(LatticeSeed seed, InterpolatedChannel levels) {
        LatticeGrowth growth = new LatticeGrowth(levels, finder(seed, levels, WIDTH_PARTS[0]));
        if (growth.start(seed)) {
            growth.growToBothSides();
        }
        return growth;
    }

    CrossingLattice lattice() {
        return lattice;
    }

    /** 1 where lines are lighter than the ground, -1 where darker. */
    int sign() {
        return finder.sign();
    }

    /** Whether a first patch of crossings was found at the seed, or between it where it took several steps for one. */
    private boolean start(LatticeSeed seed) {
        CrossingLattice patch = patchOfAnyWidth(seed);
        if (patch.size() < FEWEST_TO_START) {
            return false;
        }
        for (int parts : new int[] {2, 3, 5}) {
            if (hasLinesBetween(patch, seed.right(), seed.up(), parts)) {
                Point right = seed.right().times(1.0 / parts);
                return start(new LatticeSeed(seed.crossing(), right, seed.up(), seed.sign()));
            }
            if (hasLinesBetween(patch, seed.up(), seed.right(), parts)) {
                Point up = seed.up().times(1.0 / parts);
                return start(new LatticeSeed(seed.crossing(), seed.right(), up, seed.sign()));
            }
        }
        lattice.putAll(patch);
        return true;
    }

    private static LineCrossingFinder finder(LatticeSeed seed, InterpolatedChannel levels, double widthPart) {
        double pitch = Math.min(seed.right().norm(), seed.up().norm());
        return new LineCrossingFinder(levels, seed.sign(), Math.max(LEAST_WIDTH_PX, widthPart * pitch));
    }

    /** The lines' width is not known at first: the best of a few guesses is measured and used from then on. */
    private CrossingLattice patchOfAnyWidth(LatticeSeed seed) {
        CrossingLattice best = new CrossingLattice();
        for (double part : WIDTH_PARTS) {
            finder = finder(seed, levels, part);
            CrossingLattice found = patch(seed);
            best = found.size() > best.size() ? found : best;
        }
        if (best.size() < FEWEST_TO_START) {
            return best;
        }
        finder = new LineCrossingFinder(levels, seed.sign(), Math.max(LEAST_WIDTH_PX, best.medianWidthPx()));
        return patch(seed);
    }

    /**
     * Whether beside most crossings another line runs at a part of the way to the next. It need only rise over what is
     * to both sides of it: lines so blurred that they run into each other must not pass for ground, or the ruling would
     * be taken for one several times as wide.
     */
    private boolean hasLinesBetween(CrossingLattice patch, Point step, Point along, int parts) {
        long with = patch.inOrder().stream()
                .map(Map.Entry::getValue)
                .filter(crossing -> {
                    double line = level(crossing, step.times(1.0 / parts), along);
                    double before = level(crossing, step.times(0.5 / parts), along);
                    double after = level(crossing, step.times(1.5 / parts), along);
                    double rise = finder.sign() * (line - (before + after) / 2);
                    return rise > LEAST_CONTRAST * crossing.contrast();
                })
                .count();
        return with > patch.size() / 2;
    }

    /** The mean level beside a crossing, along the way to the next crossing but for its ends. */
    private double level(LineCrossing crossing, Point aside, Point along) {
        Point middle = crossing.pixel().plus(aside).plus(along.times(0.5));
        return levels.profile(middle, along.unit(), 0.3 * along.norm(), 1, 0, 1)[0];
    }

    /** The crossings of a patch round the seed, which it alone predicts well enough. */
    private CrossingLattice patch(LatticeSeed seed) {
        CrossingLattice found = new CrossingLattice();
        Point off = new Point(0, 0);
        for (int ring = 0; ring <= PATCH; ring++) {
            for (int i = -ring; i <= ring; i++) {
                for (int j = -ring; j <= ring; j++) {
                    if (Math.max(Math.abs(i), Math.abs(j)) == ring) {
                        Point guess = seed.crossing()
                                .plus(off)
                                .plus(seed.right().times(i))
                                .plus(seed.up().times(j));
                        Optional<LineCrossing> crossing = finder.near(guess, seed.right(), seed.up(), 0, ALL_ARMS);
                        if (crossing.isPresent()) {
                            if (found.size() == 0) {
                                off = off.plus(crossing.get().pixel().minus(guess));
                            }
                            found.put(new Cell(i, j), crossing.get());
                        }
                    }
                }
            }
        }
        return found;
    }

    /**
     * First along the patch's rows, which shows where the ground's middle is; from there to both sides at the same
     * time; and on from where they meet: farther from there than a cell's expectation looks, nothing is to be seen that
     * was not there before.
     */
    private void growToBothSides() {
        int row = lattice.middle().row();
        grow(lattice.cells(), cell -> Math.abs(cell.row() - row) <= PATCH);
        int middle = lattice.middle().column();
        List<CrossingLattice> sides = Stream.<Predicate<Cell>>of(
                        cell -> cell.column() < middle, cell -> cell.column() >= middle)
                .parallel()
                .map(this::grownOn)
                .toList();
        sides.forEach(lattice::putAll);
        List<Cell> seam = lattice.cells().stream()
                .filter(cell -> Math.abs(cell.column() - middle) <= CrossingLattice.FARTHEST + 1)
                .toList();
        grow(seam, cell -> true);
    }

    private CrossingLattice grownOn(Predicate<Cell> side) {
        LatticeGrowth growth = new LatticeGrowth(levels, finder);
        growth.lattice.putAll(lattice);
        growth.grow(lattice.cells(), side);
        return growth.lattice;
    }

    private void grow(Collection<Cell> from, Predicate<Cell> where) {
        Collection<Cell> front = from;
        while (!front.isEmpty()) {
            List<Seen> seen = front.stream()
                    .flatMap(cell -> cell.neighbours().stream())
                    .filter(where)
                    .filter(cell -> !lattice.has(cell))
                    .distinct()
                    .flatMap(cell -> lattice.expected(cell).map(at -> new Awaited(cell, at)).stream())
                    .flatMap(awaited -> seen(awaited, ENOUGH_ARMS).stream())
                    .toList();
            seen.forEach(s -> lattice.put(s.cell(), s.crossing()));
            front = seen.stream().map(Seen::cell).toList();
        }
    }

    private record Seen(Cell cell, LineCrossing crossing) {}

    private record Awaited(Cell cell, Expected expected) {}

    /** A cell's crossing, if it is found where it is expected. */
    private Optional<Seen> seen(Awaited awaited, int leastArms) {
        Expected at = awaited.expected();
        double pitch = Math.min(at.right().norm(), at.up().norm());
        return finder.near(at.pixel(), at.right(), at.up(), LEAST_CONTRAST * at.contrast(), leastArms)
                .filter(c -> c.pixel().distance(at.pixel()) < GREATEST_MISS * pitch)
                .map(crossing -> new Seen(awaited.cell(), crossing));
    }

    /**
     * Looks for crossings that no lines lead to, beyond a knife that lies across the whole ground: where a fit to those
     * found expects them, the nearest first, since the fit knows little of what is far. Grows on from each.
     *
     * @param expected by the fit; empty outside the picture
     * @return whether there were any
     */
    boolean growBeyond(Function<Cell, Optional<Expected>> expected) {
        int before = lattice.size();
        List<Seen> beyond = beyond(expected).parallelStream()
                .flatMap(awaited -> seen(awaited, ALL_ARMS).stream())
                .toList();
        for (Seen seen : beyond) {
            if (!lattice.has(seen.cell())) {
                lattice.put(seen.cell(), seen.crossing());
                grow(List.of(seen.cell()), cell -> true);
            }
        }
        return lattice.size() > before;
    }

    /** All cells that are expected and were not found, the nearest first to those that were. */
    private List<Awaited> beyond(Function<Cell, Optional<Expected>> expected) {
        List<Awaited> beyond = new ArrayList<>();
        Collection<Cell> front = lattice.cells();
        Set<Cell> passed = new HashSet<>(front);
        while (!front.isEmpty()) {
            List<Awaited> next = front.stream()
                    .flatMap(cell -> cell.neighbours().stream())
                    .filter(passed::add)
                    .flatMap(cell -> expected.apply(cell).map(at -> new Awaited(cell, at)).stream())
                    .toList();
            beyond.addAll(next);
            front = next.stream().map(Awaited::cell).toList();
        }
        return beyond;
    }

    /** Usual width of the ground's lines. */
    double lineWidthPx() {
        return lattice.medianWidthPx();
    }
}
