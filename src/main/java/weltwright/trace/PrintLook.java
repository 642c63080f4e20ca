package weltwright.trace;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence; points where it cannot are left out
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
record PrintLook(List<Sight> sights, double[] lineColour) {

    /**
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    /** Sights within this of each other are of one thing, mostly. */
    private static final double NEAR_MM = 5;

    /** A sight that fewer of its neighbours share than this is a mistake: grain that looks like a line, a speck on one. */
    private static final double SHARED = 0.35;

    /** Without the sights that their neighbours contradict. */
    PrintLook consistent() {
        Map<Cell, List<Sight>> cells = new HashMap<>();
        for (Sight sight : sights) {
            cells.computeIfAbsent(Cell.of(sight.at()), cell -> new ArrayList<>()).add(sight);
        }
        List<Sight> kept = sights.stream().filter(sight -> isShared(sight, cells)).toList();
        return new PrintLook(kept, lineColour);
    }

    /** A square of the ground, as wide as what is near reaches. */
    private record Cell(int column, int row) {
        static Cell of(Point at) {
            return new Cell((int) Math.floor(at.x() / NEAR_MM), (int) Math.floor(at.y() / NEAR_MM));
        }
    }

    private static boolean isShared(Sight sight, Map<Cell, List<Sight>> cells) {
        Cell middle = Cell.of(sight.at());
        int all = 0;
        int same = 0;
        for (int column = middle.column() - 1; column <= middle.column() + 1; column++) {
            for (int row = middle.row() - 1; row <= middle.row() + 1; row++) {
                for (Sight other : cells.getOrDefault(new Cell(column, row), List.of())) {
                    if (other.at().distance(sight.at()) < NEAR_MM) {
                        all++;
                        same += other.visible() == sight.visible() ? 1 : 0;
                    }
                }
            }
        }
        return same >= SHARED * all;
    }
}
