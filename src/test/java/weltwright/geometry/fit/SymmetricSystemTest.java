package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A system whose factor and inverse are known by hand: L = [2 0 0; 6 1 0; -8 5 3], A = L Lᵀ. */
class SymmetricSystemTest {
    private static final double[][] LOWER = {{2, 0, 0}, {6, 1, 0}, {-8, 5, 3}};
    private static final double[][] MATRIX = {{4, 12, -16}, {12, 37, -43}, {-16, -43, 98}};

    @Test
    void factorsIntoALowerTriangle() {
        double[][] lower = new SymmetricSystem(MATRIX).lowerFactor();
        for (int i = 0; i < 3; i++) {
            assertThat(lower[i]).containsExactly(LOWER[i], within(1e-12));
        }
    }

    @Test
    void solves() {
        // A (1, 2, 3) = (4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294)
        assertThat(new SymmetricSystem(MATRIX).solve(new double[] {-20, -43, 192}))
                .containsExactly(new double[] {1, 2, 3}, within(1e-11));
    }

    @Test
    void theInverseTimesTheMatrixIsOne() {
        double[][] inverse = new SymmetricSystem(MATRIX).inverse();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double product = 0;
                for (int k = 0; k < 3; k++) {
                    product += inverse[i][k] * MATRIX[k][j];
                }
                assertThat(product).isCloseTo(i == j ? 1 : 0, within(1e-10));
            }
        }
    }

    /** Scaled to a unit diagonal it is [1 0.4; 0.4 1], whatever the units. */
    @Test
    void unknownsInUnlikeUnitsDoNotSpoilEachOther() {
        double[] x =
                new SymmetricSystem(new double[][] {{1e16, 0.4}, {0.4, 1e-16}}).solve(new double[] {1.4e8, 1.4e-8});
        assertThat(x[0]).isCloseTo(1e-8, within(1e-20));
        assertThat(x[1]).isCloseTo(1e8, within(1e-4));
    }

    @Test
    void refusesAMatrixThatIsNotPositiveDefinite() {
        assertThatThrownBy(() -> new SymmetricSystem(new double[][] {{1, 1}, {1, 1}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("row 1");
        assertThatThrownBy(() -> new SymmetricSystem(new double[][] {{1, 2}, {2, 1}}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
