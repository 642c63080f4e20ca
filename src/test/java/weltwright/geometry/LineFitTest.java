package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LineFitTest {
    /** Three points by hand: the normal equations 3 h + 3 s = 6 and 3 h + 5 s = 7 give h = 1.5 and s = 0.5. */
    @Test
    void fitsByLeastSquares() {
        LineFit line = new LineFit();
        line.add(0, 1);
        line.add(1, 3);
        line.add(2, 2);
        assertThat(line.slope()).isCloseTo(0.5, within(1e-12));
        assertThat(line.at(0)).isCloseTo(1.5, within(1e-12));
        assertThat(line.at(4)).isCloseTo(3.5, within(1e-12));
    }
}
