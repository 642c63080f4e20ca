package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LeatherBendTest {
    /** K in the formula of the aviation handbooks: 0.0078 of the thickness for each degree. */
    private static final double HANDBOOK_K = 0.0078 * 180 / Math.PI;

    /**
     * FAA-H-8083-31, Aviation Maintenance Technician Handbook, Airframe, volume 1, "Bending a U-channel": sheet of
     * 0.040 in, radius 0.16 in, set-back 0.2 in, legs 1.00 in and base 2.00 in over the mould lines, so flats of 0.8,
     * 1.6 and 0.8 in. The total of 3.76 in is from memory.
     */
    @Test
    void theHandbooksChannelComesOut() {
        double bend = new LeatherBend(Math.PI / 2, 0.16, 0.040, HANDBOOK_K).allowanceMm();

        assertThat(0.8 + bend + 1.6 + bend + 0.8).isCloseTo(3.76, within(0.005));
    }

    /** The same handbook and the U.S. Navy's for structural mechanics: (0.0173 R + 0.0078 T) × degrees. */
    @Test
    void agreesWithTheFormulaInDegrees() {
        assertThat(new LeatherBend(Math.toRadians(120), 5, 3, HANDBOOK_K).allowanceMm())
                .isCloseTo((0.01745 * 5 + 0.0078 * 3) * 120, within(0.01));
    }

    /** Machinery's Handbook, straight stock for 90° bends in half-hard sheet: 0.64 T + 1.57 R. From memory. */
    @Test
    void agreesWithTheRuleForRightAngles() {
        double k = 0.64 / 1.57;

        assertThat(new LeatherBend(Math.PI / 2, 3.2, 1.6, k).allowanceMm())
                .isCloseTo(0.64 * 1.6 + 1.57 * 3.2, within(0.01));
    }
}
