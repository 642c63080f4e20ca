package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

class SeamTest {

    /** Worked by hand: 25 stitches of 4 mm through 6 mm, two back at either end, 150 mm of tail for each needle. */
    @Test
    void theThreadGoesAlongAndThroughWithEachNeedle() {
        Seam seam = seam(26, 2, layer(3, 0, 26), layer(3, 0, 26));

        assertThat(seam.threadMm()).isCloseTo(2 * ((25 + 4) * (4 + 6) + 150), within(1e-9));
    }

    /** Makers' rule for a thin stack, common practice: four times the seam. Here a metre through two layers of 2 mm. */
    @Test
    void aThinStackTakesAboutFourTimesItsLength() {
        Seam seam = seam(251, 0, layer(2, 0, 251), layer(2, 0, 251));
        double tails = 2 * 150;

        assertThat((seam.threadMm() - tails) / 1000).isCloseTo(4, within(0.1));
    }

    @Test
    void theStackIsThatOfTheLayersThatReachAHole() {
        Seam seam = seam(10, 0, layer(3, 0, 10), layer(6, 2, 5), layer(3, 0, 10));

        assertThat(seam.stackMm(1)).isEqualTo(6);
        assertThat(seam.stackMm(2)).isEqualTo(12);
        assertThat(seam.stackMm(6)).isEqualTo(12);
        assertThat(seam.stackMm(7)).isEqualTo(6);
        assertThat(seam.thickestStackMm()).isEqualTo(12);
    }

    @Test
    void aLayerCannotReachBeyondItsSeam() {
        assertThatThrownBy(() -> seam(10, 0, layer(3, 0, 10), layer(3, 6, 5)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static Seam seam(int holes, int back, Seam.Layer... layers) {
        assertThat(layers[0].holes()).hasSize(holes);
        return new Seam("seam", 4, false, back, List.of(layers));
    }

    private static Seam.Layer layer(double thickness, int first, int holes) {
        return new Seam.Layer("piece", "", thickness, first, false,
                IntStream.range(0, holes).mapToObj(i -> new Point(4 * i, 0)).toList());
    }
}
