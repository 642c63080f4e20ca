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
import java.util.stream.DoubleStream;
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
        Map<Cell, Looks> looks = new HashMap<>();
        for (Sight sight : sights) {
            Looks in = Looks.in(looks, sight.at());
            (sight.visible() ? in.visible : in.hidden).add(sight);
        }
        for (Point point : unclear) {
            Looks.in(looks, point).unclear.add(point);
        }
        Map<Cell, Spots> spots = new HashMap<>();
        looks.forEach((cell, in) -> spots.put(cell, Spots.of(in)));
        Set<Sight> shared = Collections.newSetFromMap(new IdentityHashMap<>());
        looks.keySet().parallelStream()
                .map(cell -> {
                    Stream<Spots> near = cell.andThoseRound().map(spots::get).filter(Objects::nonNull);
                    return shared(looks.get(cell), near.toList());
                })
                .forEachOrdered(shared::addAll);
        return new PrintLook(sights.stream().filter(shared::contains).toList(), unclear, lineColour);
    }

    /** The sights in a cell that those nearby share. */
    private static List<Sight> shared(Looks looks, List<Spots> near) {
        List<Sight> shared = new ArrayList<>();
        for (Sight sight : looks.visible) {
            int same = count(near, Spots::visible, sight.at());
            int all = same + count(near, Spots::hidden, sight.at());
            if (same >= SHARED * all && same >= CLEAR * (all + count(near, Spots::unclear, sight.at()))) {
                shared.add(sight);
            }
        }
        for (Sight sight : looks.hidden) {
            int same = count(near, Spots::hidden, sight.at());
            if (same >= SHARED * (same + count(near, Spots::visible, sight.at()))) {
                shared.add(sight);
            }
        }
        return shared;
    }

    /** How many places are near to one. */
    private static int count(List<Spots> near, Function<Spots, double[]> which, Point at) {
        int count = 0;
        for (Spots spots : near) {
            double[] xy = which.apply(spots);
            for (int i = 0; i < xy.length; i += 2) {
                double dx = xy[i] - at.x();
                double dy = xy[i + 1] - at.y();
                count += dx * dx + dy * dy < NEAR_MM * NEAR_MM ? 1 : 0;
            }
        }
        return count;
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

    /** The places in one cell, x and y by turns, so that many distances are soon measured. */
    private record Spots(double[] visible, double[] hidden, double[] unclear) {
        static Spots of(Looks looks) {
            return new Spots(
                    places(looks.visible.stream().map(Sight::at)),
                    places(looks.hidden.stream().map(Sight::at)),
                    places(looks.unclear.stream()));
        }

        private static double[] places(Stream<Point> points) {
            return points.flatMapToDouble(at -> DoubleStream.of(at.x(), at.y())).toArray();
        }
    }
}
