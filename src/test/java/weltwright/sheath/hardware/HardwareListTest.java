package weltwright.sheath.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.error.UserFacingException;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

class HardwareListTest {
    private static final double INCH = 25.4;

    static List<Fastener> usual() {
        return HardwareList.USUAL.fasteners();
    }

    /**
     * Common practice: rivet holes snug, neither tight to fight nor loose; a loose one is half a millimetre too wide.
     */
    @ParameterizedTest
    @MethodSource("usual")
    void theHoleIsSnug(Fastener fastener) {
        assertThat(fastener.punchMm() - fastener.postMm()).isNotNegative().isLessThan(0.5);
    }

    /** Riveted joints of machine design handbooks, from memory: margin at least 1.5 d, pitch at least 3 d. */
    @ParameterizedTest
    @MethodSource("usual")
    void distancesAreNoLessThanARivetedJoints(Fastener fastener) {
        if (fastener.kind() != Hardware.Kind.EYELET) {
            assertThat(fastener.leastToEdgeMm()).isGreaterThanOrEqualTo(1.5 * fastener.postMm());
            assertThat(fastener.leastApartMm()).isGreaterThanOrEqualTo(3 * fastener.postMm());
        }
        assertThat(fastener.leastToEdgeMm()).isGreaterThanOrEqualTo(fastener.capMm() / 2);
        assertThat(fastener.leastApartMm()).isGreaterThan(fastener.capMm());
    }

    /**
     * Common practice: a hole of 1/8 in for a rivet. Two layers of 7/8 oz (3 mm each) are an everyday stack, three one
     * too.
     */
    @Test
    void thereIsARivetForEverydayStacks() {
        for (double stack : new double[] {6, 9}) {
            Fastener rivet = HardwareList.USUAL.fastener(Hardware.Kind.RIVET, stack);
            assertThat(rivet.punchMm()).isCloseTo(INCH / 8, within(1e-9));
            assertThat(rivet.grips(stack))
                    .as("%s in %s mm", rivet.name(), stack)
                    .isTrue();
        }
        assertThat(HardwareList.USUAL.fastener(Hardware.Kind.SNAP, 3).grips(3)).isTrue();
        assertThat(HardwareList.USUAL.fastener(Hardware.Kind.EYELET, 3).grips(3))
                .isTrue();
    }

    /** The first that grips, not the one that grips best; where none does, the nearest. */
    @Test
    void whatIsLikedBestStandsFirst() {
        Fastener liked = new Fastener("liked", Hardware.Kind.RIVET, 3, 8, 5, 9);
        Fastener snug = new Fastener("snug", Hardware.Kind.RIVET, 3, 8, 5.9, 6.1);
        Fastener brass = new Fastener("long", Hardware.Kind.RIVET, 3, 8, 12, 15);
        HardwareList list = new HardwareList(List.of(brass, liked, snug), List.of());
        assertThat(list.fastener(Hardware.Kind.RIVET, 6)).isEqualTo(liked);
        assertThat(list.fastener(Hardware.Kind.RIVET, 11)).isEqualTo(brass);
        assertThatThrownBy(() -> list.fastener(Hardware.Kind.SNAP, 3))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("no snap");
        assertThatThrownBy(() -> list.ringFor(16))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("no ring");
    }

    /** Common practice: a strap of 5/8 in. */
    @Test
    void thereIsARingForTheUsualStrap() {
        assertThat(HardwareList.USUAL.ringFor(INCH * 5 / 8).insideMm()).isBetween(INCH * 5 / 8, 20.0);
    }

    /**
     * A stout rivet: its holes are punched for its post of 4.8 mm, so 5 mm wide at most, and as far apart as its caps
     * want.
     */
    @Test
    void aSheathIsPunchedForWhatIsAtHand() {
        Fastener stout = new Fastener("stout", Hardware.Kind.RIVET, 4.8, 21, 1, 20);
        HardwareList own = new HardwareList(List.of(stout), HardwareList.USUAL.rings());
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(),
                TestSpecs.bladeAlone(SheathKind.PANELS)
                        .withHardware(own)
                        .withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4)));
        PlacedHardware rivets = pattern.fastenings().get(0);
        assertThat(rivets.hardware()).isEqualTo(stout);
        assertThat(rivets.layers()).allSatisfy(layer -> {
            assertThat(layer.holes().get(0).distance(layer.holes().get(1))).isGreaterThan(21);
            Piece piece = pattern.pieces().stream()
                    .filter(p -> p.name().equals(layer.piece()))
                    .findFirst()
                    .orElseThrow();
            assertThat(piece.holes())
                    .filteredOn(hole -> hole.use() == Hole.Use.RIVET)
                    .allMatch(hole -> hole.diameterMm() >= 4.8 && hole.diameterMm() <= 5);
        });
    }

    /** Each layer has an eyelet of its own, in a hole of its post, and its cap lies clear of stitches and edges. */
    @Test
    void aDrainHoleMayBeLined() {
        Fastener eyelet = new Fastener("eyelet", Hardware.Kind.EYELET, 5, 10, 1, 5);
        for (SheathKind kind : SheathKind.values()) {
            Pattern pattern = PatternMaker.make(
                    TestKnives.dropPoint(),
                    TestSpecs.bladeAlone(kind)
                            .withDrain(new DrainHole(0, true))
                            .withHardware(new HardwareList(List.of(eyelet), List.of())));
            PlacedHardware eyelets = pattern.fastenings().get(0);
            assertThat(eyelets.count()).isEqualTo(2);
            assertThat(eyelets.stackMm()).isEqualTo(3);
            for (Seam.Layer layer : eyelets.layers()) {
                Piece piece = pattern.pieces().stream()
                        .filter(p -> p.name().equals(layer.piece()))
                        .findFirst()
                        .orElseThrow();
                Optional<Hole> hole = piece.holes().stream()
                        .filter(h -> h.centre().equals(layer.holes().get(0)))
                        .findFirst();
                assertThat(hole).get().satisfies(h -> assertThat(h.diameterMm()).isEqualTo(5));
                assertThat(piece.holes())
                        .filteredOn(h -> h.use() == Hole.Use.STITCH)
                        .allMatch(h -> h.centre().distance(hole.get().centre()) > 5 + 1);
            }
        }
    }

    @Test
    void sizesThatCannotBeAreRefusedByName() {
        Fastener upsideDown = new Fastener("stud", Hardware.Kind.RIVET, 4, 8, 5, 2);
        SheathSpec spec =
                TestSpecs.bladeAlone(SheathKind.PANELS).withHardware(new HardwareList(List.of(upsideDown), List.of()));
        assertThatThrownBy(() -> PatternMaker.make(TestKnives.dropPoint(), spec))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("stud");
    }
}
