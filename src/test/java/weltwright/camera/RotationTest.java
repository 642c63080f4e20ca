package weltwright.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Rotations whose result needs no formula. */
class RotationTest {
    private static final Vector3 V = new Vector3(3, -5, 7);

    /** A third of a turn about the space diagonal takes each axis to the next. */
    @Test
    void aThirdOfATurnAboutTheDiagonalExchangesTheAxes() {
        double each = 2 * Math.PI / 3 / Math.sqrt(3);
        Rotation third = Rotation.about(new Vector3(each, each, each));
        assertThat(third.apply(V).minus(new Vector3(7, 3, -5)).norm()).isLessThan(1e-12);
        assertThat(third.apply(third.apply(third.apply(V))).minus(V).norm()).isLessThan(1e-12);
    }

    @Test
    void isUndoneByItsTranspose() {
        Rotation some = Rotation.about(new Vector3(0.4, -1.3, 2.2));
        assertThat(some.applyInverse(some.apply(V)).minus(V).norm()).isLessThan(1e-12);
        assertThat(some.apply(V).norm()).isCloseTo(V.norm(), within(1e-12));
    }

    @Test
    void noRotationLeavesAllAsItIs() {
        assertThat(Rotation.about(new Vector3(0, 0, 0)).apply(V)).isEqualTo(V);
    }
}
