package weltwright.ground.ruled;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.ground.ruled.CrossingLattice.Cell;

/** A slanted lattice without perspective, whose crossings follow from two steps. */
class CrossingLatticeTest {
    private static final Point RIGHT = new Point(31, -4);
    private static final Point UP = new Point(-3, -29);

    private static Point pixel(Cell cell) {
        return new Point(500, 400).plus(RIGHT.times(cell.column())).plus(UP.times(cell.row()));
    }

    private static CrossingLattice lattice() {
        CrossingLattice lattice = new CrossingLattice();
        for (int column = -2; column <= 4; column++) {
            for (int row = -1; row <= 3; row++) {
                Cell cell = new Cell(column, row);
                lattice.put(cell, new LineCrossing(pixel(cell), 20 + column, 2 + 0.1 * row, 4));
            }
        }
        return lattice;
    }

    @Test
    void expectsTheNextCrossingWhereTheStepsLead() {
        for (Cell next : new Cell[] {new Cell(5, 1), new Cell(-3, 0), new Cell(0, 4), new Cell(2, -2)}) {
            CrossingLattice.Expected expected = lattice().expected(next).orElseThrow();
            assertThat(expected.pixel().distance(pixel(next))).isLessThan(1e-9);
            assertThat(expected.right().distance(RIGHT)).isLessThan(1e-9);
            assertThat(expected.up().distance(UP)).isLessThan(1e-9);
        }
        assertThat(lattice().expected(new Cell(4 + 2 * CrossingLattice.FARTHEST, 0)))
                .as("far off")
                .isEmpty();
    }

    @Test
    void countsAndOrdersItsCrossings() {
        CrossingLattice lattice = lattice();
        assertThat(lattice.size()).isEqualTo(35);
        assertThat(lattice.columns()).isEqualTo(7);
        assertThat(lattice.rows()).isEqualTo(5);
        assertThat(lattice.middle()).isEqualTo(new Cell(1, 1));
        assertThat(lattice.meanContrast()).isEqualTo(21);
        assertThat(lattice.medianWidthPx()).isEqualTo(2.1);
        assertThat(lattice.inOrder().stream().map(Map.Entry::getKey))
                .startsWith(new Cell(-2, -1), new Cell(-1, -1))
                .endsWith(new Cell(4, 3));
    }
}
