package weltwright.ground.ruled;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import weltwright.geometry.Point;

/** The detected crossings of a ruled ground by column and row, either of which may be negative. */
final class CrossingLattice {
    /**
     * Greatest distance, in columns or rows, of crossings from which the step at a cell is predicted. Chosen by eye.
     */
    static final int FARTHEST = 3;

    private final Map<Cell, LineCrossing> crossings = new HashMap<>();

    /**
     * The position of a crossing in the lattice.
     *
     * @param column counted to the right
     * @param row counted upwards
     */
    record Cell(int column, int row) {
        Cell plus(int columns, int rows) {
            return new Cell(column + columns, row + rows);
        }

        List<Cell> neighbours() {
            return List.of(plus(1, 0), plus(-1, 0), plus(0, 1), plus(0, -1));
        }
    }

    int size() {
        return crossings.size();
    }

    Set<Cell> cells() {
        // Not Set.copyOf, whose order differs from run to run.
        return new LinkedHashSet<>(crossings.keySet());
    }

    /** Returns the crossings row by row from the lowest, each row from the left. */
    List<Map.Entry<Cell, LineCrossing>> inOrder() {
        Comparator<Cell> order = Comparator.comparingInt(Cell::row).thenComparingInt(Cell::column);
        return crossings.entrySet().stream()
                .sorted(Map.Entry.comparingByKey(order))
                .toList();
    }

    double meanContrast() {
        return crossings.values().stream()
                .mapToDouble(LineCrossing::contrast)
                .average()
                .orElseThrow();
    }

    /** Returns the median width of the lines. */
    double medianWidthPx() {
        double[] widths = crossings.values().stream()
                .mapToDouble(LineCrossing::widthPx)
                .sorted()
                .toArray();
        return widths[widths.length / 2];
    }

    boolean has(Cell cell) {
        return crossings.containsKey(cell);
    }

    void put(Cell cell, LineCrossing crossing) {
        crossings.put(cell, crossing);
    }

    void putAll(CrossingLattice other) {
        crossings.putAll(other.crossings);
    }

    private Optional<Point> pixel(Cell cell) {
        return Optional.ofNullable(crossings.get(cell)).map(LineCrossing::pixel);
    }

    /**
     * The predicted crossing of a cell.
     *
     * @param pixel its position
     * @param right vector to the neighbour on the right
     * @param up vector to the upper neighbour
     * @param contrast mean contrast of the crossings next to it
     */
    record Expected(Point pixel, Point right, Point up, double contrast) {}

    /**
     * Predicts a crossing from those nearby; empty where none of its neighbours or no step nearby is known.
     * Extrapolates from two crossings in a row where there are such, else from single neighbours and the mean step.
     */
    Optional<Expected> expected(Cell cell) {
        Optional<Point> toRight = step(cell, 1, 0);
        Optional<Point> upwards = step(cell, 0, 1);
        if (toRight.isEmpty() || upwards.isEmpty()) {
            return Optional.empty();
        }
        Point right = toRight.get();
        Point up = upwards.get();
        Point sum = new Point(0, 0);
        double contrast = 0;
        int extrapolated = 0;
        Point adjacentSum = new Point(0, 0);
        int adjacent = 0;
        for (int side = 0; side < 4; side++) {
            int dx = side == 0 ? 1 : side == 1 ? -1 : 0;
            int dy = side == 2 ? 1 : side == 3 ? -1 : 0;
            LineCrossing near = crossings.get(cell.plus(dx, dy));
            if (near == null) {
                continue;
            }
            contrast += near.contrast();
            adjacent++;
            adjacentSum = adjacentSum.plus(near.pixel()).minus(right.times(dx)).minus(up.times(dy));
            Optional<Point> farther = pixel(cell.plus(2 * dx, 2 * dy));
            if (farther.isPresent()) {
                extrapolated++;
                sum = sum.plus(near.pixel().times(2).minus(farther.get()));
            }
        }
        if (adjacent == 0) {
            return Optional.empty();
        }
        Point at = extrapolated > 0 ? sum.times(1.0 / extrapolated) : adjacentSum.times(1.0 / adjacent);
        return Optional.of(new Expected(at, right, up, contrast / adjacent));
    }

    /** Returns the mean step from crossing to crossing in a direction, over the smallest neighbourhood that has one. */
    private Optional<Point> step(Cell cell, int dx, int dy) {
        Point sum = new Point(0, 0);
        int count = 0;
        for (int reach = 1; reach <= FARTHEST && count == 0; reach++) {
            for (int i = -reach; i <= reach; i++) {
                for (int j = -reach; j <= reach; j++) {
                    LineCrossing from = crossings.get(cell.plus(i, j));
                    LineCrossing to = crossings.get(cell.plus(i + dx, j + dy));
                    if (from != null && to != null) {
                        sum = sum.plus(to.pixel().minus(from.pixel()));
                        count++;
                    }
                }
            }
        }
        return count == 0 ? Optional.empty() : Optional.of(sum.times(1.0 / count));
    }

    /** Returns the cell half way between the least and the greatest column and row. */
    Cell middle() {
        return new Cell(
                (extreme(true, false) + extreme(true, true)) / 2, (extreme(false, false) + extreme(false, true)) / 2);
    }

    int columns() {
        return extreme(true, true) - extreme(true, false) + 1;
    }

    int rows() {
        return extreme(false, true) - extreme(false, false) + 1;
    }

    private int extreme(boolean column, boolean greatest) {
        IntStream numbers = crossings.keySet().stream().mapToInt(c -> column ? c.column() : c.row());
        return (greatest ? numbers.max() : numbers.min()).orElseThrow();
    }
}
