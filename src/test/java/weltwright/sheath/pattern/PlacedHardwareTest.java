package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.Ring;

/** Counted and stacked as on the bench. */
class PlacedHardwareTest {

    /** Two rivets go through every layer at once. */
    @Test
    void aRivetGoesThroughAllLayers() {
        PlacedHardware rivets = placed(Hardware.Kind.RIVET, layer(3, 2), layer(2.5, 2), layer(3, 2));
        assertThat(rivets.count()).isEqualTo(2);
        assertThat(rivets.stackMm()).isEqualTo(8.5);
        assertThat(rivets.setOnTheKnife()).isEmpty();
    }

    /** A snap is one item of two halves, each set in its own layer; its post must hold the thicker one. */
    @Test
    void aSnapsHalvesAreSetInOneLayerEach() {
        Seam.Layer over = layer(2, 1);
        PlacedHardware snap = placed(Hardware.Kind.SNAP, over, layer(3, 1));
        assertThat(snap.count()).isEqualTo(1);
        assertThat(snap.stackMm()).isEqualTo(3);
        assertThat(snap.setOnTheKnife()).contains(over);
        assertThat(placed(Hardware.Kind.SNAP, over).setOnTheKnife())
                .as("a half alone meets no other")
                .isEmpty();
    }

    /** Each layer is lined with an eyelet of its own. */
    @Test
    void anEyeletLinesOneLayer() {
        PlacedHardware eyelets = placed(Hardware.Kind.EYELET, layer(3, 1), layer(2, 1));
        assertThat(eyelets.count()).isEqualTo(2);
        assertThat(eyelets.stackMm()).isEqualTo(3);
    }

    /** A strap runs through one ring, without a hole, and is folded back on itself. */
    @Test
    void aRingIsOneItemWithoutHoles() {
        PlacedHardware ring = new PlacedHardware(
                PlacedHardware.Purpose.RING, new Ring("ring", 26, 4), List.of(layer(3, 0), layer(3, 0)));
        assertThat(ring.count()).isEqualTo(1);
        assertThat(ring.stackMm()).isEqualTo(6);
        assertThat(ring.kind()).isEqualTo(Hardware.Kind.RING);
    }

    @Test
    void aCoverChangesNothingElse() {
        PlacedHardware rivets = placed(Hardware.Kind.RIVET, layer(3, 2), layer(3, 2));
        assertThat(rivets.covered()).isFalse();
        assertThat(rivets.withCover())
                .isEqualTo(new PlacedHardware(rivets.purpose(), rivets.hardware(), rivets.layers(), true));
    }

    /** On the bench a thing is found by its name: none is without one, and no two have the same. */
    @Test
    void eachPurposeSeamPieceAndSizeHasANameOfItsOwn() {
        for (Stream<String> names : List.of(
                Stream.of(PlacedHardware.Purpose.values())
                        .map(purpose -> new PlacedHardware(purpose, new Ring("ring", 26, 4), List.of()).name()),
                Stream.of(Seam.Kind.values()).map(Seam.Kind::words),
                Stream.of(Piece.Kind.values()).map(Piece.Kind::words),
                Stream.of(Piece.Kind.values()).map(Piece.Kind::id),
                Stream.of(LayerPart.values())
                        .filter(part -> part != LayerPart.WHOLE)
                        .map(LayerPart::words),
                Stream.of(CuttingSide.values()).map(CuttingSide::words),
                Stream.of(SheathDimension.Kind.values()).map(kind -> new SheathDimension(kind, 1).name()))) {
            assertThat(names)
                    .doesNotHaveDuplicates()
                    .allSatisfy(name -> assertThat(name).isNotBlank());
        }
    }

    private static PlacedHardware placed(Hardware.Kind kind, Seam.Layer... layers) {
        Fastener fastener = new Fastener("fastener", kind, 3, 9, 2, 9);
        return new PlacedHardware(PlacedHardware.Purpose.BELT_STRAP_RIVETS, fastener, List.of(layers));
    }

    private static Seam.Layer layer(double thicknessMm, int holes) {
        return new Seam.Layer(
                "piece",
                LayerPart.WHOLE,
                thicknessMm,
                0,
                false,
                IntStream.range(0, holes).mapToObj(i -> new Point(12 * i, 0)).toList());
    }
}
