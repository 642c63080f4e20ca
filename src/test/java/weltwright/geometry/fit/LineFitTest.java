package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LineFitTest {
    /** NIST's Statistical Reference Datasets, Norris: what an ozone monitor shows, x and y by turns. */
    private static final double[] NORRIS = {
        0.2, 0.1, 337.4, 338.8, 118.2, 118.1, 884.6, 888.0, 10.1, 9.2, 226.5, 228.1, 666.3, 668.5, 996.3, 998.5,
        448.6, 449.1, 777.0, 778.9, 558.2, 559.2, 0.4, 0.3, 0.6, 0.1, 775.5, 778.1, 666.9, 668.8, 338.0, 339.3,
        447.5, 448.9, 11.6, 10.8, 556.0, 557.7, 228.1, 228.3, 995.8, 998.0, 887.6, 888.8, 120.2, 119.6, 0.3, 0.3,
        0.3, 0.6, 556.8, 557.6, 339.1, 339.3, 887.2, 888.0, 999.0, 998.5, 779.0, 778.9, 11.1, 10.2, 118.3, 117.6,
        229.2, 228.9, 669.1, 668.4, 448.9, 449.2, 0.5, 0.2
    };

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

    /** Certified: slope 1.00211681802045, intercept −0.262323073774029. */
    @Test
    void agreesWithTheCertifiedLine() {
        LineFit line = new LineFit();
        for (int i = 0; i < NORRIS.length; i += 2) {
            line.add(NORRIS[i], NORRIS[i + 1]);
        }
        assertThat(line.slope()).isCloseTo(1.00211681802045, within(1e-13));
        assertThat(line.at(0)).isCloseTo(-0.262323073774029, within(1e-11));
        assertThat(line.at(500)).isCloseTo(500 * 1.00211681802045 - 0.262323073774029, within(1e-11));
    }
}
