package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
