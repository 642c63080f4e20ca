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
 * Grows a lattice of crossings from a seed, neighbour by neighbour, over the visible part of a ruled ground.
 *
 * <p>Each crossing is searched where the crossings already found nearby predict it, so the growth follows perspective,
 * lens distortion and an uneven mat. It never skips a crossing: it goes around a knife along unbroken lines and cannot
 * miscount them. It ends where the lines end.
 */
final class LatticeGrowth {
    /** Least contrast of a line, relative to the lines next to it. Chosen by eye. */
    private static final double LEAST_CONTRAST = 0.4;

    /** Greatest distance of a crossing from its prediction, relative to the pitch. Chosen by eye. */
    private static final double GREATEST_MISS = 0.14;

    /** Number of crossings of the first patch to each side of its middle. Chosen by eye. */
    private static final int PATCH = 2;

    /** Least number of the 25 crossings of the first patch. Chosen by eye. */
    private static final int FEWEST_TO_START = 5;

    /**
     * Arms of a crossing that must be visible where unbroken lines lead to it, since a knife may hide one; see
     * {@link LineCrossing}.
     */
    private static final int ENOUGH_ARMS = 3;

    /** Arms that must be visible where only a prediction leads to a crossing. */
    private static final int ALL_ARMS = 4;

    /** Width that any narrower line has in the picture by blur. Chosen by eye. */
    private static final double LEAST_WIDTH_PX = 1.5;

    /** Line widths that are tried first, relative to the pitch. Chosen by eye. */
    private static final double[] WIDTH_PARTS = {0.03, 0.05, 0.08};

    private final InterpolatedChannel levels;
    private final CrossingLattice lattice = new CrossingLattice();
    private LineCrossingFinder finder;

    private LatticeGrowth(InterpolatedChannel levels, LineCrossingFinder finder) {
        this.levels = levels;
        this.finder = finder;
    }

    /** Grows the lattice around a seed; it has no crossings where the seed is wrong. */
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

    /** Returns 1 where lines are lighter than the ground, -1 where darker. */
    int sign() {
        return finder.sign();
    }

    /**
     * Detects the first patch of crossings. Where other lines run between them, at a half, a third or a fifth of the
     * step, starts again with the smaller step.
     */
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

    /** Detects the patch with several line widths, and again with the width measured on the best. */
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
     * Whether beside most crossings another line runs at a fraction of the step. It need only rise above both of its
     * sides: blurred lines that run into each other must not pass for ground, or a multiple of the pitch would be
     * taken.
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

    /** Returns the mean level along a line beside a crossing, without the line's ends at the crossings. */
    private double level(LineCrossing crossing, Point aside, Point along) {
        Point middle = crossing.pixel().plus(aside).plus(along.times(0.5));
        return levels.profile(middle, along.unit(), 0.3 * along.norm(), 1, 0, 1)[0];
    }

    /**
     * Detects the patch of crossings that the seed predicts. The crossing at the seed, if found, corrects the
     * prediction of the rest.
     */
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
     * Grows along the patch's rows, which gives the ground's middle; from there to the left and to the right at the
     * same time; and again from where both sides meet. Farther from the seam than predictions reach, this adds nothing.
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
            List<Detected> detected = front.stream()
                    .flatMap(cell -> cell.neighbours().stream())
                    .filter(where)
                    .filter(cell -> !lattice.has(cell))
                    .distinct()
                    .flatMap(cell -> lattice.expected(cell).map(at -> new Predicted(cell, at)).stream())
                    .flatMap(predicted -> detected(predicted, ENOUGH_ARMS).stream())
                    .toList();
            detected.forEach(s -> lattice.put(s.cell(), s.crossing()));
            front = detected.stream().map(Detected::cell).toList();
        }
    }

    private record Detected(Cell cell, LineCrossing crossing) {}

    private record Predicted(Cell cell, Expected expected) {}

    /** Detects the crossing of a cell near its prediction. */
    private Optional<Detected> detected(Predicted predicted, int leastArms) {
        Expected at = predicted.expected();
        double pitch = Math.min(at.right().norm(), at.up().norm());
        return finder.near(at.pixel(), at.right(), at.up(), LEAST_CONTRAST * at.contrast(), leastArms)
                .filter(c -> c.pixel().distance(at.pixel()) < GREATEST_MISS * pitch)
                .map(crossing -> new Detected(predicted.cell(), crossing));
    }

    /**
     * Searches crossings that no unbroken lines lead to, on the far side of a knife across the whole ground, where a
     * fitted view predicts them. Starts with the nearest, since the prediction degrades with distance, and grows from
     * each.
     *
     * @param expected prediction by the fit; empty outside the picture
     * @return whether any were found
     */
    boolean growBeyond(Function<Cell, Optional<Expected>> expected) {
        int before = lattice.size();
        List<Detected> beyond = beyond(expected).parallelStream()
                .flatMap(predicted -> detected(predicted, ALL_ARMS).stream())
                .toList();
        for (Detected detected : beyond) {
            if (!lattice.has(detected.cell())) {
                lattice.put(detected.cell(), detected.crossing());
                grow(List.of(detected.cell()), cell -> true);
            }
        }
        return lattice.size() > before;
    }

    /** Returns all predicted cells without a crossing, in the order of their distance from the lattice. */
    private List<Predicted> beyond(Function<Cell, Optional<Expected>> expected) {
        List<Predicted> beyond = new ArrayList<>();
        Collection<Cell> front = lattice.cells();
        Set<Cell> passed = new HashSet<>(front);
        while (!front.isEmpty()) {
            List<Predicted> next = front.stream()
                    .flatMap(cell -> cell.neighbours().stream())
                    .filter(passed::add)
                    .flatMap(cell -> expected.apply(cell).map(at -> new Predicted(cell, at)).stream())
                    .toList();
            beyond.addAll(next);
            front = next.stream().map(Predicted::cell).toList();
        }
        return beyond;
    }

    /** Returns the median width of the ground's lines. */
    double lineWidthPx() {
        return lattice.medianWidthPx();
    }
}
