package weltwright.trace.visibility;

import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Point;

/** A grid index of points that counts those within a fixed distance of a point. */
public final class PointGrid {
    private final double nearMm;
    private final double left;
    private final double low;
    private final int columns;
    private final int rows;

    /** For each square the index of its first point, the points sorted by squares; then the number of points. */
    private final int[] start;

    private final double[] x;
    private final double[] y;

    /** @param nearMm radius of the neighbourhood in which {@link #near} counts */
    public PointGrid(List<Point> places, double nearMm) {
        this.nearMm = nearMm;
        var xs = places.stream().mapToDouble(Point::x).summaryStatistics();
        var ys = places.stream().mapToDouble(Point::y).summaryStatistics();
        left = xs.getMin();
        low = ys.getMin();
        columns = places.isEmpty() ? 0 : 1 + (int) ((xs.getMax() - left) / nearMm);
        rows = places.isEmpty() ? 0 : 1 + (int) ((ys.getMax() - low) / nearMm);
        int[] square =
                places.stream().mapToInt(p -> row(p) * columns + column(p)).toArray();
        start = new int[columns * rows + 1];
        for (int of : square) {
            start[of + 1]++;
        }
        for (int k = 0; k < columns * rows; k++) {
            start[k + 1] += start[k];
        }
        x = new double[square.length];
        y = new double[square.length];
        int[] next = start.clone();
        for (int i = 0; i < square.length; i++) {
            int at = next[square[i]]++;
            x[at] = places.get(i).x();
            y[at] = places.get(i).y();
        }
    }

    private int column(Point at) {
        return (int) Math.floor((at.x() - left) / nearMm);
    }

    private int row(Point at) {
        return (int) Math.floor((at.y() - low) / nearMm);
    }

    /** Returns the number of points nearer to a place than the radius. */
    public int near(Point at) {
        int first = Math.max(0, column(at) - 1);
        int last = Math.min(columns - 1, column(at) + 1);
        if (first > last) {
            return 0;
        }
        // The points of neighbouring squares of a row are contiguous.
        return IntStream.rangeClosed(Math.max(0, row(at) - 1), Math.min(rows - 1, row(at) + 1))
                .map(row -> near(at, start[row * columns + first], start[row * columns + last + 1]))
                .sum();
    }

    private int near(Point at, int from, int to) {
        int count = 0;
        for (int i = from; i < to; i++) {
            double dx = x[i] - at.x();
            double dy = y[i] - at.y();
            count += dx * dx + dy * dy < nearMm * nearMm ? 1 : 0;
        }
        return count;
    }
}
