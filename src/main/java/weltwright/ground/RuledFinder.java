package weltwright.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.ground.Lattice.Cell;
import weltwright.ground.Lattice.Expected;
import weltwright.trouble.Trouble;

/**
 * Finds a ruled ground in a picture, such as a cutting mat or squared paper, and its crossings to a fraction of a pixel.
 *
 * <p>Made for two families of parallel lines square to each other, each evenly spaced, lighter or darker than the ground
 * between them, some of them bolder; for a knife that hides part of it, numbers, scars, the ground's edge, and a table
 * around it. The steps:
 *
 * <ol>
 *   <li>in a few patches of a reduced picture, guess at lattices ({@link LatticeSeed});
 *   <li>from the first guess that holds, grow outwards on the full picture ({@link LatticeGrowth});
 *   <li>fit a view to the crossings; look where it says that there are more, beyond the reach of unbroken lines;
 *   <li>drop those that the view contradicts.
 * </ol>
 *
 * The pitch must be told: nothing in a picture tells a small ground seen from near from a large one seen from afar. Each
 * line that shows is taken to be one pitch from the next, bold or not. It stops at crossings in pixels;
 * {@link ViewSolver} makes a camera and a pose of them.
 */
public final class RuledFinder {
    /** Fewer than this are a pattern on something else, or a ground hidden nearly wholly. */
    private static final int FEWEST_CROSSINGS = 30;

    private static final int FEWEST_LINES = 4;

    /** With this many the rest of the guesses need not be tried. */
    private static final int PLENTY = 120;

    /** Enough to check a fit with; all of them are left to the solver of the view. */
    private static final int SAMPLE = 150;

    /** The check must not hang on what is known of the lens, so any phone's will do. Common practice. */
    private static final double USUAL_FOCAL_PER_DIAGONAL = 27 / Math.hypot(36, 24);

    private static final double USUAL_FOCAL_SIGMA = 0.3;

    /** How far from the view's fit a crossing may be, as a part of the pitch, if it is one: mats are a little uneven. */
    private static final double GREATEST_MISFIT = 0.08;

    private RuledFinder() {}

    /**
     * A ruled ground. Its frame has x along the lines that are nearer to level, rightwards, y upwards in the picture, z
     * to the camera, and its origin on a crossing near the middle of what shows.
     *
     * @param crossings where the picture shows them; hundreds as a rule
     * @param extent what of the ground was seen: the smallest convex region round the crossings, in the ground frame
     * @param linesLighter whether lines are lighter than the ground between them
     * @param lineWidthPx usual width of the thinner lines
     */
    public record Found(List<Reference> crossings, Region extent, boolean linesLighter, double lineWidthPx) {}

    /**
     * @param pitchXMm from one upright line to the next
     * @param pitchYMm from one level line to the next
     * @throws Trouble where no such ground is to be seen, or too little of it
     */
    public static Found find(Picture picture, double pitchXMm, double pitchYMm) {
        Levels levels = new Levels(picture.grey());
        LatticeGrowth best = null;
        LatticeSeed bestSeed = null;
        Iterator<LatticeSeed> seeds = LatticeSeed.in(picture.grey()).iterator();
        while (seeds.hasNext() && (best == null || size(best) <= PLENTY)) {
            LatticeSeed seed = seeds.next();
            LatticeGrowth growth = LatticeGrowth.from(seed, levels);
            if (best == null || size(growth) > size(best)) {
                best = growth;
                bestSeed = seed;
            }
        }
        if (best == null || !isEnough(best.lattice())) {
            throw nothing();
        }
        View view = view(best.lattice(), pitchXMm, pitchYMm, levels);
        growBeyond(best, view, pitchXMm, pitchYMm, levels);
        List<Reference> crossings = fitting(best.lattice(), view, pitchXMm, pitchYMm);
        if (crossings.size() < 0.9 * size(best)) {
            throw new Trouble(
                    "The lines that are to be seen in the picture are not spaced evenly.",
                    "Lay the mat or the paper flat, or use the printed reference sheet.");
        }
        return new Found(
                crossings,
                Region.hull(crossings.stream().map(Reference::onGround).toList()),
                bestSeed.sign() > 0,
                best.lineWidthPx());
    }

    private static int size(LatticeGrowth growth) {
        return growth.lattice().crossings().size();
    }

    private static boolean isEnough(Lattice lattice) {
        return lattice.crossings().size() >= FEWEST_CROSSINGS
                && lattice.columns() >= FEWEST_LINES
                && lattice.rows() >= FEWEST_LINES;
    }

    private static Trouble nothing() {
        return new Trouble(
                "No ruled ground is to be seen in the picture.",
                "Photograph the knife on a cutting mat or squared paper with plenty of its lines in view, sharp and"
                        + " evenly lit, or choose another kind of ground.");
    }

    private static List<Reference> references(Lattice lattice, double pitchXMm, double pitchYMm) {
        Cell middle = lattice.middle();
        return lattice.crossings().entrySet().stream()
                .sorted(Comparator.comparingInt((Map.Entry<Cell, Crossing> e) -> e.getKey().row())
                        .thenComparingInt(e -> e.getKey().column()))
                .map(e -> new Reference(
                        place(e.getKey(), middle, pitchXMm, pitchYMm), e.getValue().pixel()))
                .toList();
    }

    private static Point place(Cell cell, Cell middle, double pitchXMm, double pitchYMm) {
        return new Point((cell.column() - middle.column()) * pitchXMm, (cell.row() - middle.row()) * pitchYMm);
    }

    private static View view(Lattice lattice, double pitchXMm, double pitchYMm, Levels levels) {
        List<Reference> all = references(lattice, pitchXMm, pitchYMm);
        List<Reference> sample = new ArrayList<>();
        double step = Math.max(1, all.size() / (double) SAMPLE);
        for (double k = 0; k < all.size(); k += step) {
            sample.add(all.get((int) k));
        }
        double focalPx = USUAL_FOCAL_PER_DIAGONAL * Math.hypot(levels.columns(), levels.rows());
        return ViewSolver.solve(
                sample,
                levels.columns(),
                levels.rows(),
                        new ViewSolver.FocalPrior(focalPx, USUAL_FOCAL_SIGMA))
                .view();
    }

    /** Every crossing that the view expects in the picture and that is not yet found, looked for once. */
    private static void growBeyond(
            LatticeGrowth growth, View view, double pitchXMm, double pitchYMm, Levels levels) {
        Lattice lattice = growth.lattice();
        Cell middle = lattice.middle();
        Function<Cell, Point> seenAt =
                cell -> view.pixel(Plane.GROUND.over(place(cell, middle, pitchXMm, pitchYMm)));
        double contrast = lattice.crossings().values().stream()
                .mapToDouble(Crossing::contrast)
                .average()
                .orElseThrow();
        List<Cell> cells = new ArrayList<>();
        int reachX = lattice.columns();
        int reachY = lattice.rows();
        for (int i = -reachX; i <= reachX; i++) {
            for (int j = -reachY; j <= reachY; j++) {
                Cell cell = middle.plus(i, j);
                if (!lattice.has(cell) && levels.contains(seenAt.apply(cell), 4)) {
                    cells.add(cell);
                }
            }
        }
        growth.growBeyond(cells, cell -> {
            Point at = seenAt.apply(cell);
            return new Expected(
                    at,
                    seenAt.apply(cell.plus(1, 0)).minus(at),
                    seenAt.apply(cell.plus(0, 1)).minus(at),
                    contrast);
        });
    }

    private static List<Reference> fitting(Lattice lattice, View view, double pitchXMm, double pitchYMm) {
        double greatestMm = GREATEST_MISFIT * Math.min(pitchXMm, pitchYMm);
        return references(lattice, pitchXMm, pitchYMm).stream()
                .filter(r -> view.meets(r.pixel(), Plane.GROUND).distance(r.onGround()) < greatestMm)
                .toList();
    }
}
