package weltwright.trace.segment;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import weltwright.geometry.Point;

/**
 * Finds the largest cluster of points that lie near one another. Isolated points, such as a line hidden by a speck, and
 * other objects on the sheet are left out.
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
     * Returns the largest cluster by single linkage on a grid: points in the same square or in touching ones are
     * linked.
     *
     * @param nearMm side of a square; more than the pitch of the ground's lines
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

    /** Removes the connected component of a cell and returns its points; cells touch by side or corner. */
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
