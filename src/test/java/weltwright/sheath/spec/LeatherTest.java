package weltwright.sheath.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LeatherTest {
    private static final Leather BODY = new Leather(3, 0.4, 0.02, Leather.Bulge.FACE, 1.7);

    /**
     * DIN 6935, bending of flat products, writes the same of sheet (from memory): K from 0 at the inside to 1 at the
     * outside.
     */
    @Test
    void theNeutralFibreLiesBetweenInsideAndOutside() {
        assertThat(BODY.withNeutralFactor(0).neutralMm()).isZero();
        assertThat(BODY.withNeutralFactor(0.5).neutralMm()).isCloseTo(3.0 / 2, within(1e-12));
        assertThat(BODY.withNeutralFactor(1).neutralMm()).isCloseTo(3, within(1e-12));
    }

    /** A strap cut from the body's hide is as thick as it; one of its own leather bends and shrinks as that does. */
    @Test
    void aStrapOfItsOwnLeatherDiffersInThicknessAlone() {
        assertThat(new StrapLeather(25, OptionalDouble.empty()).in(BODY)).isEqualTo(BODY);
        assertThat(new StrapLeather(16, OptionalDouble.of(2)).in(BODY)).isEqualTo(BODY.withThicknessMm(2));
    }
}
