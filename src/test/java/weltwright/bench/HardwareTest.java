package weltwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.Piece;
import weltwright.trouble.Trouble;

class HardwareTest {
    private static final Fastener RIVET = new Fastener("rivet", Fastener.Kind.RIVET, 3.3, 9, 5, 7);

    @TempDir
    private Path folder;

    static List<Fastener> usual() {
        return HardwareList.usual().fasteners();
    }

    /** Common practice: rivet holes snug, neither tight to fight nor loose; a loose one is half a millimetre too wide. */
    @ParameterizedTest
    @MethodSource("usual")
    void theHoleIsSnug(Fastener fastener) {
        assertThat(fastener.punchMm() - fastener.postMm()).isNotNegative().isLessThan(0.5);
    }

    /** Riveted joints of machine design handbooks, from memory: margin at least 1.5 d, pitch at least 3 d. */
    @ParameterizedTest
    @MethodSource("usual")
    void distancesAreNoLessThanARivetedJoints(Fastener fastener) {
        assertThat(fastener.leastToEdgeMm()).isGreaterThanOrEqualTo(1.5 * fastener.postMm());
        assertThat(fastener.leastApartMm()).isGreaterThanOrEqualTo(3 * fastener.postMm());
        assertThat(fastener.leastToEdgeMm()).isGreaterThan(fastener.capMm() / 2);
        assertThat(fastener.leastApartMm()).isGreaterThan(fastener.capMm());
    }

    @Test
    void theGripIsCheckedAgainstTheStack() {
        assertThat(RIVET.gripWarning(6)).isEmpty();
        assertThat(RIVET.gripWarning(7)).isEmpty();
        assertThat(RIVET.gripWarning(4)).get().asString().contains("too thin").contains("5 mm to 7 mm");
        assertThat(RIVET.gripWarning(9.5)).get().asString().contains("too thick").contains("9.5 mm");
    }

    /** Common practice: a hole of 1/8 in for a rivet. Two layers of 7/8 oz (3 mm each) are an everyday stack, three one too. */
    @Test
    void thereIsARivetForEverydayStacks() {
        HardwareList list = HardwareList.usual();
        for (double stack : new double[] {3.5, 6, 9}) {
            assertThat(list.choose(Fastener.Kind.RIVET, 25.4 / 8, stack)).get().satisfies(rivet -> {
                assertThat(rivet.punchMm()).isCloseTo(25.4 / 8, within(1e-9));
                assertThat(rivet.grips(stack)).as("%s in %s mm", rivet.name(), stack).isTrue();
            });
        }
        assertThat(list.choose(Fastener.Kind.SNAP, 4.5, 3)).get().satisfies(snap ->
                assertThat(snap.grips(3)).isTrue());
    }

    /** Common practice: a strap of 5/8 in. */
    @Test
    void thereIsARingForTheUsualStrap() {
        assertThat(HardwareList.usual().ringFor(25.4 * 5 / 8)).get().satisfies(ring ->
                assertThat(ring.insideMm()).isBetween(25.4 * 5 / 8, 20.0));
        assertThat(HardwareList.usual().ringFor(80)).isEmpty();
    }

    @Test
    void holesTooNearTellOneAnotherAndTheEdge() {
        Piece strap = new Piece(
                "strap",
                1,
                3,
                Polyline.closed(List.of(new Point(0, 0), new Point(16, 0), new Point(16, 180), new Point(0, 180))),
                List.of(),
                List.of());

        assertThat(HoleSpacing.warnings(strap, RIVET, List.of(new Point(8, 12), new Point(8, 24)))).isEmpty();
        assertThat(HoleSpacing.warnings(strap, RIVET, List.of(new Point(8, 12), new Point(8, 20))))
                .singleElement()
                .asString()
                .contains("8.0 mm apart");
        assertThat(HoleSpacing.warnings(strap, RIVET, List.of(new Point(8, 3))))
                .singleElement()
                .asString()
                .contains("3.0 mm from the edge");
    }

    @Test
    void aMakersOwnListIsRead() throws IOException {
        Path file = Files.writeString(
                folder.resolve("own.json"),
                """
                {"source": "my drawer",
                 "fasteners": [{"name": "stud", "kind": "RIVET", "postMm": 4, "capMm": 8, "gripFromMm": 2, "gripToMm": 5}],
                 "rings": []}
                """);

        assertThat(HardwareList.read(file).fasteners())
                .containsExactly(new Fastener("stud", Fastener.Kind.RIVET, 4, 8, 2, 5));
    }

    @Test
    void aListThatCannotBeIsRefusedByName() throws IOException {
        Path upsideDown = Files.writeString(
                folder.resolve("grip.json"),
                """
                {"source": "my drawer",
                 "fasteners": [{"name": "stud", "kind": "RIVET", "postMm": 4, "capMm": 8, "gripFromMm": 5, "gripToMm": 2}],
                 "rings": []}
                """);
        Path notJson = Files.writeString(folder.resolve("words.json"), "rivets: many");
        Path missing = Files.writeString(
                folder.resolve("missing.json"),
                """
                {"source": "my drawer", "fasteners": [{"name": "stud", "kind": "RIVET"}], "rings": []}
                """);

        assertThatThrownBy(() -> HardwareList.read(upsideDown)).isInstanceOf(Trouble.class).hasMessageContaining("stud");
        assertThatThrownBy(() -> HardwareList.read(notJson)).isInstanceOf(Trouble.class).hasMessageContaining("words");
        assertThatThrownBy(() -> HardwareList.read(missing)).isInstanceOf(Trouble.class);
        assertThatThrownBy(() -> HardwareList.read(folder.resolve("none.json"))).isInstanceOf(Trouble.class);
    }
}
