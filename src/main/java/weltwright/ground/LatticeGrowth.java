package weltwright.ground;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import weltwright.geometry.Point;
import weltwright.ground.Lattice.Cell;
import weltwright.ground.Lattice.Expected;

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

    /** Of the 25 of the first patch. */
    private static final int FEWEST_TO_START = 5;

    /** Narrower lines look as wide as this through any lens. */
    private static final double LEAST_WIDTH_PX = 1.5;

    private static final int[][] SIDES = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};

    private final Levels levels;
    private final Lattice lattice = new Lattice();
    private CrossingFinder finder;

    private LatticeGrowth(Levels levels) {
        this.levels = levels;
    }

    /** The lattice round a seed; without crossings where the seed is none. */
    static LatticeGrowth from(LatticeSeed seed, Levels levels) {
        LatticeGrowth growth = new LatticeGrowth(levels);
        if (growth.start(seed)) {
            growth.grow();
        }
        return growth;
    }

    Lattice lattice() {
        return lattice;
    }

    /** Whether a first patch of crossings was found at the seed, or between it where it took several steps for one. */
    private boolean start(LatticeSeed seed) {
        Map<Cell, Crossing> patch = patchOfAnyWidth(seed);
        if (patch.size() < FEWEST_TO_START) {
            return false;
        }
        for (int parts : new int[] {2, 3, 5}) {
            Point right = seed.right().times(1.0 / parts);
            Point up = seed.up().times(1.0 / parts);
            if (hasLinesBetween(patch, right, right, seed.up())) {
                return start(new LatticeSeed(seed.crossing(), right, seed.up(), seed.sign()));
            }
            if (hasLinesBetween(patch, up, seed.right(), up)) {
                return start(new LatticeSeed(seed.crossing(), seed.right(), up, seed.sign()));
            }
        }
        patch.forEach(lattice::put);
        return true;
    }

    /** The lines' width is not known at first: the best of a few guesses is measured and used from then on. */
    private Map<Cell, Crossing> patchOfAnyWidth(LatticeSeed seed) {
        double pitch = Math.min(seed.right().norm(), seed.up().norm());
        Map<Cell, Crossing> best = new HashMap<>();
        for (double part : new double[] {0.03, 0.05, 0.08}) {
            finder = new CrossingFinder(levels, seed.sign(), Math.max(LEAST_WIDTH_PX, part * pitch));
            Map<Cell, Crossing> found = patch(seed);
            best = found.size() > best.size() ? found : best;
        }
        if (best.size() < FEWEST_TO_START) {
            return best;
        }
        finder = new CrossingFinder(levels, seed.sign(), Math.max(LEAST_WIDTH_PX, medianWidthPx(best)));
        return patch(seed);
    }

    /** Whether most crossings have another one at a part of the way to the next, along lines as strong as theirs. */
    private boolean hasLinesBetween(Map<Cell, Crossing> patch, Point off, Point right, Point up) {
        long with = patch.values().stream()
                .filter(c -> finder.near(c.pixel().plus(off), right, up, LEAST_CONTRAST * c.contrast())
                        .filter(between -> between.arms() == 4)
                        .isPresent())
                .count();
        return with > patch.size() / 2;
    }

    /** The crossings of a five by five patch that the seed alone predicts well enough. */
    private Map<Cell, Crossing> patch(LatticeSeed seed) {
        Map<Cell, Crossing> found = new HashMap<>();
        Point off = new Point(0, 0);
        for (int ring = 0; ring <= 2; ring++) {
            for (int i = -ring; i <= ring; i++) {
                for (int j = -ring; j <= ring; j++) {
                    if (Math.max(Math.abs(i), Math.abs(j)) == ring) {
                        Point guess = seed.crossing().plus(off).plus(seed.right().times(i)).plus(seed.up().times(j));
                        Optional<Crossing> crossing = finder.near(guess, seed.right(), seed.up(), 0);
                        if (crossing.isPresent() && crossing.get().arms() == 4) {
                            if (found.isEmpty()) {
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

    private static double medianWidthPx(Map<Cell, Crossing> crossings) {
        double[] widths = crossings.values().stream().mapToDouble(Crossing::widthPx).sorted().toArray();
        return widths[widths.length / 2];
    }

    private void grow() {
        Deque<Cell> front = new ArrayDeque<>(lattice.crossings().keySet());
        while (!front.isEmpty()) {
            Cell from = front.remove();
            for (int[] side : SIDES) {
                Cell cell = from.plus(side[0], side[1]);
                if (!lattice.has(cell)) {
                    Optional<Crossing> found = lattice.expected(cell).flatMap(this::look);
                    if (found.isPresent()) {
                        lattice.put(cell, found.get());
                        front.add(cell);
                    }
                }
            }
        }
    }

    private Optional<Crossing> look(Expected expected) {
        double pitch = Math.min(expected.right().norm(), expected.up().norm());
        return finder.near(expected.pixel(), expected.right(), expected.up(), LEAST_CONTRAST * expected.contrast())
                .filter(c -> c.pixel().distance(expected.pixel()) < GREATEST_MISS * pitch);
    }

    /** Looks for crossings that lines do not lead to: beyond a knife that lies across the whole ground. */
    void growBeyond(List<Cell> cells, Function<Cell, Expected> where) {
        int before = lattice.crossings().size();
        for (Cell cell : cells) {
            look(where.apply(cell)).filter(c -> c.arms() == 4).ifPresent(c -> lattice.put(cell, c));
        }
        if (lattice.crossings().size() > before) {
            grow();
        }
    }

    /** Usual width of the ground's lines. */
    double lineWidthPx() {
        return medianWidthPx(lattice.crossings());
    }
}
