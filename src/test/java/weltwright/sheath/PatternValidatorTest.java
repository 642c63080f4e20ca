package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import net.jqwik.api.RandomGenerator;
import net.jqwik.api.sessions.JqwikSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.LongRun;
import weltwright.assembly.AssemblyPlan;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.WeltSpec;

/** No pattern that would spoil leather is given out, whatever the knife and the choices. */
class PatternValidatorTest {

    /**
     * Knives of all families and sizes, and every choice over its whole range: each sheath is refused in words that
     * name what to change, or what comes is sound by a measure of its own ({@link MeasuredFaults}).
     */
    @Test
    void anySheathIsRefusedOrSound() {
        long seed = LongRun.seed(getClass());
        int tries = LongRun.tries(150, 3000);
        Map<String, Integer> outcomes = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        JqwikSession.run(() -> {
            RandomGenerator<Knife> knives = TestKnives.ofAnySize().generator(1000, false);
            RandomGenerator<SheathSpec> specs = AllowedSpecs.any().generator(1000, false);
            Random random = new Random(seed);
            for (int i = 0; i < tries; i++) {
                Knife knife = knives.next(random).value();
                SheathSpec spec = specs.next(random).value();
                try {
                    Pattern pattern = PatternMaker.make(knife, spec);
                    AssemblyPlan.of(pattern);
                    List<String> faults = MeasuredFaults.of(pattern, spec);
                    outcomes.merge(faults.isEmpty() ? "sound" : "wrong", 1, Integer::sum);
                    faults.stream()
                            .map(fault -> fault + ": " + knife + ", " + spec)
                            .forEach(wrong::add);
                } catch (UserFacingException trouble) {
                    outcomes.merge("refused", 1, Integer::sum);
                    if (!trouble.getMessage().matches("(?s).*[.] (Choose|Give|Place|Let|Take|Put|Name|Move) .*[.]")) {
                        wrong.add("a refusal that does not say what to change: " + trouble.getMessage());
                    }
                }
            }
        });
        System.out.println(getClass().getSimpleName() + ": of " + tries + " sheaths " + outcomes);
        assertThat(wrong).isEmpty();
        assertThat(outcomes.get("sound")).isGreaterThan(tries / 3);
    }

    @Test
    void aSoundPatternPasses() {
        for (SheathKind kind : SheathKind.values()) {
            Pattern pattern = sound(kind);
            assertThat(PatternValidator.passed(pattern, SheathSpec.standard(kind)))
                    .isSameAs(pattern);
        }
    }

    /** Each spoils a sound pattern in one way, as the second says. */
    static Stream<Arguments> spoilt() {
        return Stream.of(
                Arguments.of(
                        "both be called back",
                        pieces(piece -> piece.kind() == Piece.Kind.FACE ? of(Piece.Kind.BACK, piece) : piece)),
                Arguments.of(
                        "cut of the face would cross itself",
                        pieces(piece -> piece.kind() == Piece.Kind.FACE
                                ? new Piece(
                                        Piece.Kind.FACE, 1, 3, piece.outline().reversed(), piece.holes(), piece.marks())
                                : piece)),
                Arguments.of("outside the leather", pieces(piece -> moved(piece, Piece.Kind.FACE, 500))),
                Arguments.of("from the cut", pieces(piece -> moved(piece, Piece.Kind.FACE, 2))),
                Arguments.of(
                        "would not meet",
                        seams(layer -> layer.piece().equals("back")
                                ? new Seam.Layer(
                                        "back",
                                        layer.part(),
                                        3,
                                        0,
                                        false,
                                        layer.holes().subList(1, layer.holes().size()))
                                : layer)),
                Arguments.of(
                        "would lack holes of the welt seam",
                        pieces(piece -> piece.kind() == Piece.Kind.WELT
                                ? new Piece(
                                        Piece.Kind.WELT, piece.count(), 3, piece.outline(), List.of(), piece.marks())
                                : piece)));
    }

    @ParameterizedTest
    @MethodSource("spoilt")
    void whatWouldSpoilLeatherIsRefused(String words, UnaryOperator<Pattern> spoil) {
        Pattern pattern = spoil.apply(sound(SheathKind.PANELS));

        assertThatThrownBy(() -> PatternValidator.passed(pattern, SheathSpec.standard(SheathKind.PANELS)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(words)
                .hasMessageContaining("Choose");
    }

    /** What differs from the iron by more than 5 % is told, or it is refused. */
    @Test
    void aPitchThatNobodyIsToldOfIsRefused() {
        SheathSpec other = SheathSpec.standard(SheathKind.PANELS)
                .withStitching(new Stitching(25.4 / 8, 4.5, 2, OptionalDouble.empty()));

        assertThatThrownBy(() -> PatternValidator.passed(sound(SheathKind.PANELS), other))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("mm apart");
    }

    /** Two leathers that are the same to a tenth of a millimetre have names of their own. */
    @Test
    void leathersOfNearlyOneThicknessHaveNamesOfTheirOwn() {
        WeltSpec two = new WeltSpec(OptionalInt.of(3), 4, List.of(1.16, 1.18), false);
        List<String> names =
                PatternMaker.make(
                                TestKnives.dropPoint(),
                                SheathSpec.standard(SheathKind.FOLDED).withWelt(two))
                        .pieces()
                        .stream()
                        .map(Piece::name)
                        .toList();

        assertThat(names).contains("welt of 1.16 mm", "welt of 1.18 mm").doesNotHaveDuplicates();
    }

    /** Nine layers of 8 mm are 72 mm: no body goes round that. */
    @Test
    void aWeltThatKeepsTheBodyOpenIsRefused() {
        SheathSpec spec = SheathSpec.standard(SheathKind.FOLDED)
                .withLeather(new Leather(5, 0.5, 0, Leather.Bulge.SHARED))
                .withWelt(new WeltSpec(OptionalInt.of(9), 4, List.of(8.0), true));

        assertThatThrownBy(() -> PatternMaker.make(TestKnives.dropPoint(), spec))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("A welt 72.0 mm thick")
                .hasMessageContaining("fewer layers");
    }

    /** A wide margin and a slim knife: the joint of a welt in two once went through the holes of the other side. */
    @Test
    void aWeltInTwoIsCutAcrossItsBandAlone() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS)
                .withStitching(new Stitching(10, 4, 2, OptionalDouble.empty()))
                .withHandleDepthMm(60)
                .withWelt(new WeltSpec(OptionalInt.of(1), 4, List.of(), true));

        for (Knife knife : List.of(TestKnives.leaf(), TestKnives.dropPoint())) {
            assertThat(MeasuredFaults.of(PatternMaker.make(knife, spec), spec)).isEmpty();
        }
    }

    private static Pattern sound(SheathKind kind) {
        return PatternMaker.make(TestKnives.dropPoint(), SheathSpec.standard(kind));
    }

    private static UnaryOperator<Pattern> pieces(UnaryOperator<Piece> spoil) {
        return pattern -> new Pattern(
                pattern.pieces().stream().map(spoil).toList(),
                pattern.seams(),
                pattern.fastenings(),
                pattern.drawCheck(),
                pattern.sizes(),
                pattern.advice(),
                pattern.sheathed());
    }

    private static UnaryOperator<Pattern> seams(UnaryOperator<Seam.Layer> spoil) {
        return pattern -> new Pattern(
                pattern.pieces(),
                pattern.seams().stream()
                        .map(seam -> new Seam(
                                seam.kind(),
                                seam.pitch(),
                                seam.closed(),
                                seam.stitching(),
                                seam.layers().stream().map(spoil).toList()))
                        .toList(),
                pattern.fastenings(),
                pattern.drawCheck(),
                pattern.sizes(),
                pattern.advice(),
                pattern.sheathed());
    }

    private static Piece of(Piece.Kind kind, Piece piece) {
        return new Piece(kind, piece.count(), piece.thicknessMm(), piece.outline(), piece.holes(), piece.marks());
    }

    /** One of its holes moved along x, out over the nearer side. */
    private static Piece moved(Piece piece, Piece.Kind kind, double mm) {
        if (piece.kind() != kind) {
            return piece;
        }
        Hole outermost = piece.holes().stream()
                .max((a, b) -> Double.compare(a.centre().x(), b.centre().x()))
                .orElseThrow();
        List<Hole> holes = new ArrayList<>(piece.holes());
        holes.remove(outermost);
        holes.add(new Hole(outermost.centre().plus(new Point(mm, 0)), outermost.diameterMm(), outermost.use()));
        return new Piece(kind, piece.count(), piece.thicknessMm(), piece.outline(), holes, piece.marks());
    }
}
