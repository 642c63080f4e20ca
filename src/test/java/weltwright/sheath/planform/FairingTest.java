package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class FairingTest {

    @Property(tries = 200)
    void nothingIsMadeLess(
            @ForAll @Size(min = 30, max = 120) List<@DoubleRange(min = -20, max = 20) Double> list,
            @ForAll @DoubleRange(min = 0.01, max = 2) double slope) {
        double[] values = list.stream().mapToDouble(Double::doubleValue).toArray();

        for (double[] fair : List.of(
                Fairing.faired(values, 6), Fairing.sloped(values, slope, slope), Fairing.hollowsRounded(values, 2))) {
            for (int i = 0; i < values.length; i++) {
                assertThat(fair[i]).isGreaterThanOrEqualTo(values[i] - 1e-9);
            }
        }
    }

    @Test
    void aStraightSlopeStaysAsItIs() {
        double[] slope = new double[50];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = 3 - 0.4 * i;
        }

        assertThat(Fairing.faired(slope, 6)).containsExactly(slope, within(1e-9));
        assertThat(Fairing.sloped(slope, 0.4, 0.4)).containsExactly(slope, within(1e-9));
    }

    /** A step of 6 at a slope of 0.5 reaches 12 places out, and no farther; at one of 2 it is reached within 3. */
    @Test
    void aStepFallsOffAndRisesAtTheSlopes() {
        double[] step = new double[40];
        Arrays.fill(step, 5, 10, 6);

        double[] sloped = Fairing.sloped(step, 0.5, 2);

        assertThat(sloped[1]).isZero();
        assertThat(sloped[3]).isCloseTo(2, within(1e-9));

        assertThat(sloped[9]).isEqualTo(6);
        assertThat(sloped[15]).isCloseTo(3, within(1e-9));
        assertThat(sloped[21]).isCloseTo(0, within(1e-9));
        assertThat(sloped[39]).isZero();
    }

    /**
     * Worked by hand: the mean of three, taken twice, weighs (1, 2, 3, 2, 1) / 9; the foot of a slope of 1 rises by
     * 4/9.
     */
    @Test
    void theFootOfASlopeIsRoundedAndItsBrinkStays() {
        double[] slope = new double[40];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = Math.max(0, Math.min(10, 20 - i));
        }

        double[] rounded = Fairing.hollowsRounded(slope, 1);

        assertThat(rounded[10]).isEqualTo(10);
        assertThat(rounded[11]).isEqualTo(9);
        assertThat(rounded[19]).isCloseTo(1 + 1 / 9.0, within(1e-9));
        assertThat(rounded[20]).isCloseTo(4 / 9.0, within(1e-9));
        assertThat(rounded[22]).isZero();
    }

    @Test
    void aCornerIsRounded() {
        double[] corner = new double[60];
        for (int i = 0; i < corner.length; i++) {
            corner[i] = i < 30 ? 0 : -(i - 30);
        }
        double[] fair = Fairing.faired(corner, 6);
        double sharpest = 0;
        for (int i = 1; i + 1 < fair.length; i++) {
            sharpest = Math.max(sharpest, Math.abs(fair[i - 1] - 2 * fair[i] + fair[i + 1]));
        }

        assertThat(sharpest).isLessThan(0.15);
    }

    /** A step that is known to within one place reaches one place farther, on either side and at both ends. */
    @Test
    void aStepIsWidenedByOnePlace() {
        assertThat(Fairing.widened(new double[] {0, 0, 5, 0, 0, 0, 3})).containsExactly(0, 5, 5, 5, 0, 3, 3);
        assertThat(Fairing.widened(new double[] {4, 0, 0})).containsExactly(4, 4, 0);
    }

    /** A parabola is bent alike everywhere, so fairing raises it alike everywhere, by what its hollow fills. */
    @Test
    void aSmoothCurveComesOutNearlyAsItWas() {
        double[] curve = new double[80];
        for (int i = 0; i < curve.length; i++) {
            curve[i] = 0.002 * (i - 40) * (i - 40);
        }
        double[] fair = Fairing.faired(curve, 6);
        // The running mean of i² over ±6 is 14 more: 6 · 7 / 3; it is taken twice.
        for (int i = 15; i < 65; i++) {
            assertThat(fair[i] - curve[i]).isCloseTo(0.002 * 2 * 14, within(1e-9));
        }
    }
}
