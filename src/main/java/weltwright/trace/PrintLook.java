package weltwright.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
            Looks.in(cells, sight.at()).clear().add(sight);
        }
        for (Point point : unclear) {
            Looks.in(cells, point).unclear().add(point);
        }
        Set<Sight> shared = Collections.newSetFromMap(new IdentityHashMap<>());
        cells.forEach((cell, looks) -> {
            Looks near = Looks.around(cells, cell);
            looks.clear().stream().filter(near::share).forEach(shared::add);
        });
        return new PrintLook(sights.stream().filter(shared::contains).toList(), unclear, lineColour);
    }

    /** A square of the ground, as wide as what is near reaches. */
    private record Cell(int column, int row) {
        static Cell of(Point at) {
            return new Cell((int) Math.floor(at.x() / NEAR_MM), (int) Math.floor(at.y() / NEAR_MM));
        }
    }

    /** What was looked at in one cell, or in several. */
    private record Looks(List<Sight> clear, List<Point> unclear) {
        static Looks none() {
            return new Looks(new ArrayList<>(), new ArrayList<>());
        }

        static Looks in(Map<Cell, Looks> cells, Point at) {
            return cells.computeIfAbsent(Cell.of(at), cell -> none());
        }

        /** In a cell and in those round it. */
        static Looks around(Map<Cell, Looks> cells, Cell middle) {
            Looks around = none();
            for (int column = middle.column() - 1; column <= middle.column() + 1; column++) {
                for (int row = middle.row() - 1; row <= middle.row() + 1; row++) {
                    Looks looks = cells.getOrDefault(new Cell(column, row), none());
                    around.clear.addAll(looks.clear);
                    around.unclear.addAll(looks.unclear);
                }
            }
            return around;
        }

        /** Whether enough of those near a sight are like it. */
        boolean share(Sight sight) {
            int same = 0;
            int others = 0;
            for (Sight other : clear) {
                if (other.at().distance(sight.at()) < NEAR_MM) {
                    same += other.visible() == sight.visible() ? 1 : 0;
                    others += other.visible() == sight.visible() ? 0 : 1;
                }
            }
            int open = 0;
            for (Point other : unclear) {
                open += other.distance(sight.at()) < NEAR_MM ? 1 : 0;
            }
            return same >= SHARED * (same + others)
                    && (!sight.visible() || same >= CLEAR * (same + others + open));
        }
    }
}
