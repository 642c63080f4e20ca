package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.sheath.spec.Stitching;

class SeamTest {

    @Test
    void aSeamThatRunsRoundHasAStitchMore() {
        Seam.Layer layer = layer(3, 0, 20);

        assertThat(new Seam(Seam.Kind.BELT_LOOP, 4, true, Stitching.USUAL, List.of(layer)).stitchCount())
                .isEqualTo(20);
        assertThat(new Seam(Seam.Kind.WELT_SEAM, 4, false, Stitching.USUAL, List.of(layer)).stitchCount())
                .isEqualTo(19);
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

    /** Layers that begin or end with their seam are whole rows; one that would begin before it is not of it. */
    @Test
    void aLayerLiesWhollyInItsSeam() {
        assertThat(seam(10, 0, layer(3, 0, 10), layer(3, 6, 4)).stackMm(9)).isEqualTo(6);
        assertThatThrownBy(() -> seam(10, 0, layer(3, 0, 10), layer(3, -1, 5)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** 3.6 mm is a tenth less than 4 mm, and 4.2 mm a twentieth more. */
    @Test
    void aPitchIsOffByTheShareOfItsWorstPart() {
        assertThat(new Seam.Pitch(4, 3.6, 4.2).offBy(4)).isCloseTo(0.1, within(1e-12));
        assertThat(new Seam.Pitch(4, 3.9, 4.2).offBy(4)).isCloseTo(0.05, within(1e-12));
        assertThat(seam(10, 0, layer(3, 0, 10)).pitchMm()).isEqualTo(4);
    }

    private static Seam seam(int holes, int back, Seam.Layer... layers) {
        assertThat(layers[0].holes()).hasSize(holes);
        return new Seam(Seam.Kind.WELT_SEAM, 4, false, Stitching.USUAL.withBackStitches(back), List.of(layers));
    }

    private static Seam.Layer layer(double thickness, int first, int holes) {
        return new Seam.Layer(
                "piece",
                LayerPart.WHOLE,
                thickness,
                first,
                false,
                IntStream.range(0, holes).mapToObj(i -> new Point(4 * i, 0)).toList());
    }
}
