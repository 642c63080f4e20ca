package weltwright.output.print;

import java.util.List;
import java.util.Set;
import weltwright.message.Messages;

/**
 * The part of a piece that one page shows, where the piece is larger than a page.
 *
 * @param piece its name
 * @param cell its place in the grid
 * @param all cells that have something on them
 */
record Tile(String piece, Cell cell, Set<Cell> all) {
    private static final Messages TEXTS = Messages.of(Tile.class);

    /**
     * A place in the grid of tiles.
     *
     * @param row from the top, from 0
     * @param column from the left, from 0
     */
    record Cell(int row, int column) {
        /** A letter for the row and a number for the column: B2. */
        String name() {
            return letters(row) + (column + 1);
        }

        private static String letters(int row) {
            return (row < 26 ? "" : letters(row / 26 - 1)) + (char) ('A' + row % 26);
        }

        Cell neighbour(Side side) {
            return switch (side) {
                case LEFT -> new Cell(row, column - 1);
                case RIGHT -> new Cell(row, column + 1);
                case UPPER -> new Cell(row - 1, column);
                case LOWER -> new Cell(row + 1, column);
            };
        }
    }

    /** A side of a page that another joins. */
    enum Side {
        LEFT(TEXTS.text("tile.left")),
        RIGHT(TEXTS.text("tile.right")),
        UPPER(TEXTS.text("tile.above")),
        LOWER(TEXTS.text("tile.below"));

        private final String words;

        Side(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    boolean joins(Side side) {
        return all.contains(cell.neighbour(side));
    }

    List<Side> joins() {
        return List.of(Side.values()).stream().filter(this::joins).toList();
    }

    int rows() {
        return all.stream().mapToInt(Cell::row).max().orElseThrow() + 1;
    }

    int columns() {
        return all.stream().mapToInt(Cell::column).max().orElseThrow() + 1;
    }
}
