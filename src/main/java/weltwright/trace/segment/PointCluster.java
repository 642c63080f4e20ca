package weltwright.trace.segment;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import weltwright.geometry.Point;

/**
 * The largest group of points of which each is near another of the group. Strays, such as a line that a speck hides,
 * are left out, as are other things on the sheet that lie apart from the largest one.
 */
final class PointCluster {
    private final double cellMm;
    private final Map<Long, List<Point>> cells = new HashMap<>();

    private PointCluster(List<Point> points, double nearMm) {
        cellMm = nearMm;
        for (Point p : points) {
            cells.computeIfAbsent(cell(p, 0, 0), key -> new ArrayList<>()).add(p);
        }
    }

    /**
     * @param nearMm points nearer than this to each other belong together: more than the pitch of the ground's lines
     */
    static List<Point> largest(List<Point> points, double nearMm) {
        return new PointCluster(points, nearMm).largest();
    }

    private List<Point> largest() {
        List<Point> largest = List.of();
        while (!cells.isEmpty()) {
            List<Point> group = take(cells.keySet().iterator().next());
            largest = group.size() > largest.size() ? group : largest;
        }
        return largest;
    }

    /** Takes out of the cells all that hangs together with one of them, cells touching by side or corner. */
    private List<Point> take(long first) {
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

    private long cell(Point p, int dx, int dy) {
        long column = (long) Math.floor(p.x() / cellMm) + dx;
        long row = (long) Math.floor(p.y() / cellMm) + dy;
        return column << 32 ^ (row & 0xffffffffL);
    }
}
