package weltwright.trace;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import weltwright.geometry.Point;

/**
 * The largest group of points of which each is near another of the group. Strays, such as a line that a speck hides, are
 * left out, as are other things on the sheet that lie apart from the largest one.
 */
final class HiddenCluster {
    /** Points nearer than this to each other belong together: more than the pitch of any sheet's lines. */
    private static final double NEAR_MM = 17;

    private HiddenCluster() {}

    static List<Point> largest(List<Point> points) {
        Map<Long, List<Point>> cells = new HashMap<>();
        for (Point p : points) {
            cells.computeIfAbsent(cell(p, 0, 0), key -> new ArrayList<>()).add(p);
        }
        List<Point> largest = List.of();
        while (!cells.isEmpty()) {
            List<Point> group = take(cells, cells.keySet().iterator().next());
            largest = group.size() > largest.size() ? group : largest;
        }
        return largest;
    }

    /** Takes out of the cells all that hangs together with one of them, cells touching by side or corner. */
    private static List<Point> take(Map<Long, List<Point>> cells, long first) {
        List<Point> group = new ArrayList<>();
        Deque<List<Point>> open = new ArrayDeque<>(List.of(cells.remove(first)));
        while (!open.isEmpty()) {
            List<Point> here = open.pop();
            group.addAll(here);
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    List<Point> next = cells.remove(cell(here.get(0), dx, dy));
                    if (next != null) {
                        open.push(next);
                    }
                }
            }
        }
        return group;
    }

    private static long cell(Point p, int dx, int dy) {
        long column = (long) Math.floor(2 * p.x() / NEAR_MM) + dx;
        long row = (long) Math.floor(2 * p.y() / NEAR_MM) + dy;
        return column << 32 ^ row & 0xffffffffL;
    }
}
