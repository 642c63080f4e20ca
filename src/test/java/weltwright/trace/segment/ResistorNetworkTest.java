package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against circuits whose potentials Kirchhoff's and Ohm's laws give by hand. */
class ResistorNetworkTest {
    /**
     * A relaxation above the optimum, as 1.95 is for networks as small as these, leaves 0.95 of an error at each sweep
     * (Young 1954): 4e-5 after 200.
     */
    private static final double CONVERGED = 0.001;

    @Test
    void equalResistorsInSeriesDivideTheVoltageEvenly() {
        ResistorNetwork net = new ResistorNetwork(11, 1);
        for (int x = 0; x < 11; x++) {
            net.connect(x, 0, 0.3f, 0);
        }
        net.fix(0, 0, 1);
        net.fix(10, 0, 0);

        float[] potential = net.solve();

        for (int x = 0; x <= 10; x++) {
            assertThat((double) potential[x]).isCloseTo(1 - x / 10.0, within(CONVERGED));
        }
    }

    @Test
    void unequalResistorsDivideItByTheirResistance() {
        ResistorNetwork net = new ResistorNetwork(1, 3);
        net.connect(0, 0, 0, 1);
        net.connect(0, 1, 0, 0.25f);
        net.fix(0, 0, 1);
        net.fix(0, 2, 0);

        // 1 ohm above, 4 below: four fifths are left between them.
        assertThat((double) net.solve()[1]).isCloseTo(0.8, within(CONVERGED));
    }

    @Test
    void aPlateHeldAtTwoOppositeSidesHasTheSamePotentialAllAcross() {
        int columns = 9;
        int rows = 13;
        ResistorNetwork net = new ResistorNetwork(columns, rows);
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                net.connect(x, y, 1, 1);
            }
        }
        for (int x = 0; x < columns; x++) {
            net.fix(x, 0, 1);
            net.fix(x, rows - 1, 0);
        }

        float[] potential = net.solve();

        for (int i = 0; i < potential.length; i++) {
            assertThat((double) potential[i]).isCloseTo(1 - i / columns / (rows - 1.0), within(CONVERGED));
        }
    }
}
