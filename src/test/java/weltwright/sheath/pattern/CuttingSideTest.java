package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Polygon;
import weltwright.geometry.Point;
import weltwright.knife.TestKnives;
import weltwright.sheath.MadeSheath;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.RandomSheaths;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;

/** Which side of each piece is up, held against the piece laid on its own mirror image. */
class CuttingSideTest implements RandomSheaths {
    private static CuttingSide of(Pattern pattern, String name) {
        Piece piece = pattern.pieces().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
        return CuttingSide.of(pattern, piece);
    }

    @Test
    void bodyIsGrainUpWeltEitherWayAndStrapAlike() {
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(),
                TestSpecs.bladeAlone(SheathKind.FOLDED)
                        .withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4))
                        .withStrap(Optional.of(HandleStrap.USUAL)));

        assertThat(of(pattern, "body")).isEqualTo(CuttingSide.GRAIN);
        assertThat(of(pattern, "welt")).isEqualTo(CuttingSide.EITHER);
        assertThat(of(pattern, "belt strap")).isEqualTo(CuttingSide.GRAIN_MIRRORED_ALIKE);
        assertThat(of(pattern, "rivet cover")).isEqualTo(CuttingSide.GRAIN_MIRRORED_ALIKE);
    }

    /**
     * A strap round the handle has its rivet off its middle; across its length it is its own mirror image all the same.
     */
    @Test
    void aStrapWithItsRivetOffTheMiddleIsAlike() {
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(),
                TestSpecs.bladeAlone(SheathKind.PANELS).withStrap(Optional.of(HandleStrap.USUAL)));

        assertThat(of(pattern, "handle strap")).isEqualTo(CuttingSide.GRAIN_MIRRORED_ALIKE);
    }

    /** By overlay (JTS): a piece that may be mirrored covers its mirror image in its upright middle, any other not. */
    @Property
    void whatMayBeMirroredCoversItsMirrorImage(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        for (Piece piece : pattern.pieces()) {
            CuttingSide up = CuttingSide.of(pattern, piece);
            Polygon cut = piece.outline().polygon();
            double twice = cut.getEnvelopeInternal().getMinX()
                    + cut.getEnvelopeInternal().getMaxX();
            double off = cut.symDifference(piece.outline()
                            .map(p -> new Point(twice - p.x(), p.y()))
                            .polygon())
                    .getArea();
            // 0.3 mm between the outlines, and as much from the axis of symmetry to the upright middle
            double within = 2 * 0.3 * piece.outline().lengthMm();
            if (up == CuttingSide.GRAIN_MIRRORED_ALIKE) {
                assertThat(off).as(piece.name()).isLessThan(within);
            }
            if (List.of("body", "face", "back").contains(piece.name()) && off > within) {
                assertThat(up).as(piece.name()).isEqualTo(CuttingSide.GRAIN);
            }
        }
    }

    /** Caps lie wholly under the cover, and 2 mm more of it are glued down; it stays clear of every stitch. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void aCoverGoesOverTheRivetsInTheBack(SheathKind kind) {
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(),
                TestSpecs.bladeAlone(kind).withBelt(new BeltAttachment(BeltAttachment.Style.HANGING_RING, 38, 4)));
        PlacedHardware rivets = pattern.fastenings().stream()
                .filter(fastening -> fastening.name().equals("ring strap rivets"))
                .findFirst()
                .orElseThrow();
        Piece cover = pattern.pieces().stream()
                .filter(piece -> rivets.covered() && piece.kind() == Piece.Kind.RIVET_COVER)
                .findFirst()
                .orElseThrow();
        List<Point> on = rivets.layers().get(0).holes();
        double apart = on.get(0).distance(on.get(1));
        double cap = ((Fastener) rivets.hardware()).capMm();
        var box = cover.outline().lineString().getEnvelopeInternal();

        assertThat(box.getHeight()).isGreaterThanOrEqualTo(apart + cap + 4);
        assertThat(box.getWidth()).isGreaterThanOrEqualTo(cap + 4);
        List<Seam.Layer> main = pattern.seams().get(0).layers();
        double nearest = main.get(main.size() - 1).holes().stream()
                .mapToDouble(hole -> Math.min(hole.distance(on.get(0)), hole.distance(on.get(1))))
                .min()
                .orElseThrow();
        assertThat(box.getWidth() / 2).isLessThan(nearest);
    }
}
