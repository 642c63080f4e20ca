package weltwright.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence
 * @param unclear the points that were looked at and where it cannot
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
record PrintLook(List<Sight> sights, List<Point> unclear, double[] lineColour) {

    /**
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    /** Sights within this of each other are of one thing, mostly. */
    private static final double NEAR_MM = 5;

    /** A sight that fewer of the sights nearby share than this is a mistake: a speck on a line, grain that looks like one. */
    private static final double SHARED = 0.35;

    /**
     * Where the ground is bare most looks at its print are clear. A pattern on a handle may look like a line here and
     * there: by far fewer of the looks nearby.
     */
    private static final double CLEAR = 0.3;

    /** Without the sights that their neighbours contradict. */
    PrintLook consistent() {
        Map<Cell, Looks> cells = new HashMap<>();
        for (Sight sight : sights) {
            Looks looks = Looks.in(cells, sight.at());
            (sight.visible() ? looks.visible : looks.hidden).add(sight);
        }
        for (Point point : unclear) {
            Looks.in(cells, point).unclear.add(point);
        }
        Set<Sight> shared = Collections.newSetFromMap(new IdentityHashMap<>());
        cells.keySet().parallelStream().map(cell -> shared(cell, cells)).forEachOrdered(shared::addAll);
        return new PrintLook(sights.stream().filter(shared::contains).toList(), unclear, lineColour);
    }

    /** The sights in a cell that those nearby share. */
    private static List<Sight> shared(Cell cell, Map<Cell, Looks> cells) {
        List<Looks> near = cell.andThoseRound().map(cells::get).filter(Objects::nonNull).toList();
        Spots visible = Spots.of(near, Looks::visible, Sight::at);
        Spots hidden = Spots.of(near, Looks::hidden, Sight::at);
        Spots open = Spots.of(near, Looks::unclear, at -> at);
        List<Sight> shared = new ArrayList<>();
        for (Sight sight : cells.get(cell).visible) {
            int same = visible.near(sight.at());
            int all = same + hidden.near(sight.at());
            if (same >= SHARED * all && same >= CLEAR * (all + open.near(sight.at()))) {
                shared.add(sight);
            }
        }
        for (Sight sight : cells.get(cell).hidden) {
            int same = hidden.near(sight.at());
            if (same >= SHARED * (same + visible.near(sight.at()))) {
                shared.add(sight);
            }
        }
        return shared;
    }

    /** A square of the ground, as wide as what is near reaches. */
    private record Cell(int column, int row) {
        static Cell of(Point at) {
            return new Cell((int) Math.floor(at.x() / NEAR_MM), (int) Math.floor(at.y() / NEAR_MM));
        }

        Stream<Cell> andThoseRound() {
            return IntStream.range(0, 9).mapToObj(k -> new Cell(column - 1 + k % 3, row - 1 + k / 3));
        }
    }

    /** What was looked at in one cell. */
    private record Looks(List<Sight> visible, List<Sight> hidden, List<Point> unclear) {
        static Looks in(Map<Cell, Looks> cells, Point at) {
            return cells.computeIfAbsent(
                    Cell.of(at), cell -> new Looks(new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
        }
    }

    /** Places, held so that many distances are soon measured. */
    private record Spots(double[] x, double[] y) {
        static <T> Spots of(List<Looks> looks, Function<Looks, List<T>> which, Function<T, Point> place) {
            int count = looks.stream().mapToInt(look -> which.apply(look).size()).sum();
            Spots spots = new Spots(new double[count], new double[count]);
            int i = 0;
            for (Looks look : looks) {
                for (T at : which.apply(look)) {
                    spots.x[i] = place.apply(at).x();
                    spots.y[i++] = place.apply(at).y();
                }
            }
            return spots;
        }

        int near(Point at) {
            int near = 0;
            for (int i = 0; i < x.length; i++) {
                double dx = x[i] - at.x();
                double dy = y[i] - at.y();
                near += dx * dx + dy * dy < NEAR_MM * NEAR_MM ? 1 : 0;
            }
            return near;
        }
    }
}
