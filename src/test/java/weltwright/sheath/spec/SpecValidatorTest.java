package weltwright.sheath.spec;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.TestKnives;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;

/** Whatever is out of the bounds that forms and files state is refused by its name. */
class SpecValidatorTest {
    private static final SheathSpec SPEC = SheathSpec.standard(SheathKind.PANELS);

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theUsualSheathPasses(SheathKind kind) {
        assertThatCode(() -> SpecValidator.check(TestKnives.dropPoint(), SheathSpec.standard(kind)))
                .doesNotThrowAnyException();
    }

    /** Of a handle 110 mm long a fifth is left for the hand, 22 mm, as the class says. */
    @Test
    void aFifthOfTheHandleIsLeftForTheHand() {
        Knife knife = TestKnives.dropPoint();
        assertThatCode(() -> SpecValidator.check(knife, SPEC.withHandleDepthMm(87)))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> SpecValidator.check(knife, SPEC.withHandleDepthMm(89)))
                .isInstanceOf(UserFacingException.class);
    }

    static Stream<Arguments> choices() {
        return Stream.of(
                choice("leather thickness", s -> s.withLeather(s.leather().withThicknessMm(8.1))),
                choice("neutral factor", s -> s.withLeather(s.leather().withNeutralFactor(1.1))),
                choice("give of formed leather", s -> s.withLeather(s.leather().withGiveMm(5.1))),
                choice("shrinkage", s -> s.withLeather(s.leather().withFormingShrink(0.11))),
                choice("number of welt layers", s -> s.withWelt(s.welt().withLayers(OptionalInt.of(13)))),
                choice("inner margin", s -> s.withWelt(s.welt().withInnerMarginMm(0.9))),
                choice("leather thickness", s -> s.withWelt(s.welt().withLeathersMm(List.of(3.0, 0.7)))),
                choice("number of leathers", s -> s.withWelt(s.welt().withLeathersMm(Collections.nCopies(7, 3.0)))),
                choice("stitch margin", s -> s.withStitching(s.stitching().withMarginMm(1.4))),
                choice("stitch pitch", s -> s.withStitching(s.stitching().withPitchMm(12.1))),
                choice(
                        "number of back-stitches",
                        s -> s.withStitching(s.stitching().withBackStitches(7))),
                choice("thread thickness", s -> s.withStitching(s.stitching().withThreadMm(OptionalDouble.of(2.1)))),
                choice("depth of the throat's cut", s -> s.withThroat(s.throat().withDepthMm(41))),
                choice("ease", s -> s.withEaseMm(-0.1)),
                choice("belt width", s -> s.withBelt(s.belt().withBeltWidthMm(11))),
                choice("belt thickness", s -> s.withBelt(s.belt().withBeltThicknessMm(13))),
                choice("tilt", s -> s.withCarry(s.carry().withTiltRad(Math.toRadians(-46)))),
                choice("depth of the handle", s -> s.withHandleDepthMm(111)),
                choice(
                        "width of the belt strap",
                        s -> s.withBelt(s.belt().withStrap(new StrapLeather(61, OptionalDouble.empty())))),
                choice(
                        "leather of the belt strap",
                        s -> s.withBelt(s.belt().withStrap(new StrapLeather(25, OptionalDouble.of(0.7))))),
                choice("allowance of the strap", s -> s.withStrap(strap(21, HandleStrap.USUAL.leather()))),
                choice(
                        "width of the strap round the handle",
                        s -> s.withStrap(strap(1, new StrapLeather(9, OptionalDouble.empty())))),
                choice(
                        "leather of the strap round the handle",
                        s -> s.withStrap(strap(1, new StrapLeather(16, OptionalDouble.of(8.1))))),
                choice("drain hole", s -> s.withDrain(new DrainHole(0.9, false))),
                choice("drain hole", s -> s.withDrain(new DrainHole(11, false))));
    }

    @ParameterizedTest
    @MethodSource("choices")
    void aChoiceOutOfItsBoundsIsRefusedByName(String name, UnaryOperator<SheathSpec> beyond) {
        assertRefused(TestKnives.dropPoint(), beyond.apply(SPEC), name);
    }

    /** An eyelet gives the hole its size, and 0 stands for no hole: neither is a hole too small. */
    @Test
    void aDrainHoleThatIsLinedOrLeftOutHasNoDiameter() {
        assertAccepted(SPEC.withDrain(new DrainHole(0.5, true)));
        assertAccepted(SPEC.withDrain(DrainHole.NONE));
    }

    static Stream<Arguments> knives() {
        Knife drop = TestKnives.dropPoint();
        Landmarks at = drop.landmarks();
        return Stream.of(
                Arguments.of("spine thickness", knife(at, 16, 18, CrossSectionShape.usual(0.4))),
                Arguments.of("handle thickness", knife(at, 3.5, 61, CrossSectionShape.usual(0.4))),
                Arguments.of(
                        "squareness of the handle",
                        knife(at, 3.5, 18, CrossSectionShape.usual(0.4).withHandleExponent(1.9))),
                Arguments.of("behind the edge", knife(at, 3.5, 18, CrossSectionShape.usual(3.6))),
                Arguments.of(
                        "height of the grind",
                        knife(
                                at,
                                3.5,
                                18,
                                CrossSectionShape.usual(0.4).withGrind(new Grind(Grind.Kind.SHORT_BEVEL, 0.4)))),
                Arguments.of(
                        "length of the blade",
                        knife(at.withTip(new Point(24, 0)), 3.5, 18, CrossSectionShape.usual(0.4))),
                Arguments.of(
                        "length of the handle",
                        knife(at.withButt(new Point(-9, 0)), 3.5, 18, CrossSectionShape.usual(0.4))),
                Arguments.of(
                        "height of the blade at the heel",
                        knife(
                                at.withHeel(new Point(0, 10)).withSpineStart(new Point(0, 12)),
                                3.5,
                                18,
                                CrossSectionShape.usual(0.4))));
    }

    @ParameterizedTest
    @MethodSource("knives")
    void aKnifeOutOfItsBoundsIsRefusedByName(String name, Knife knife) {
        assertRefused(knife, SPEC, name);
    }

    /** A full flat grind has no line at which it ends. */
    @Test
    void theHeightOfAGrindCountsWhereThereIsOne() {
        Knife flat = knife(TestKnives.dropPoint().landmarks(), 3.5, 18, CrossSectionShape.usual(0.4));
        assertThatCode(() -> SpecValidator.check(flat, SPEC)).doesNotThrowAnyException();
        Knife hollow = knife(
                flat.landmarks(), 3.5, 18, CrossSectionShape.usual(0.4).withGrind(new Grind(Grind.Kind.HOLLOW, 12)));
        assertThatCode(() -> SpecValidator.check(hollow, SPEC)).doesNotThrowAnyException();
    }

    /** A dagger has an edge where the fold would be. */
    @Test
    void aFoldedBodyIsNotMadeForTwoEdges() {
        Knife dagger = knife(
                TestKnives.dropPoint().landmarks(),
                3.5,
                18,
                CrossSectionShape.usual(0.4).withGrind(Grind.DOUBLE_EDGED));
        assertRefused(dagger, SPEC.withKind(SheathKind.FOLDED), "double-edged");
        assertThatCode(() -> SpecValidator.check(dagger, SPEC)).doesNotThrowAnyException();
    }

    @Test
    void anOutlineThatCrossesItselfIsRefused() {
        Knife drop = TestKnives.dropPoint();
        List<OutlineNode> nodes = new ArrayList<>(drop.outline().nodes());
        Collections.swap(nodes, 5, 9);
        Knife crossed = new Knife(new Outline(nodes), drop.landmarks(), 3, 18, CrossSectionShape.usual(0.3));
        assertRefused(crossed, SPEC, "crosses itself");
    }

    /** A cap no wider than its post slips through the hole, and a grip that ends where it begins holds nothing. */
    @ParameterizedTest
    @CsvSource({
        "3, 8, 2, 5, true",
        "3, 8, 0, 5, true",
        "0, 8, 2, 5, false",
        "3, 3, 2, 5, false",
        "3, 8, -0.1, 5, false",
        "3, 8, 5, 5, false"
    })
    void aFastenerThatCannotBeIsRefused(double postMm, double capMm, double fromMm, double toMm, boolean possible) {
        Fastener stud = new Fastener("stud", Hardware.Kind.RIVET, postMm, capMm, fromMm, toMm);
        assertHardware(new HardwareList(List.of(stud), List.of()), possible);
    }

    @ParameterizedTest
    @CsvSource({"20, 3, true", "0, 3, false", "20, 0, false", "NaN, 3, false"})
    void aRingThatCannotBeIsRefused(double insideMm, double wireMm, boolean possible) {
        assertHardware(new HardwareList(List.of(), List.of(new Ring("stud", insideMm, wireMm))), possible);
    }

    private static void assertHardware(HardwareList list, boolean possible) {
        if (possible) {
            assertAccepted(SPEC.withHardware(list));
        } else {
            assertRefused(TestKnives.dropPoint(), SPEC.withHardware(list), "stud");
        }
    }

    private static void assertAccepted(SheathSpec spec) {
        assertThatCode(() -> SpecValidator.check(TestKnives.dropPoint(), spec)).doesNotThrowAnyException();
    }

    private static void assertRefused(Knife knife, SheathSpec spec, String name) {
        assertThatThrownBy(() -> SpecValidator.check(knife, spec))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(name);
    }

    private static Arguments choice(String name, UnaryOperator<SheathSpec> beyond) {
        return Arguments.of(name, beyond);
    }

    private static Optional<HandleStrap> strap(double allowanceMm, StrapLeather leather) {
        return Optional.of(new HandleStrap(20, HandleStrap.Side.RIGHT, allowanceMm, leather));
    }

    private static Knife knife(Landmarks at, double spineMm, double handleMm, CrossSectionShape shaping) {
        return new Knife(TestKnives.dropPoint().outline(), at, spineMm, handleMm, shaping);
    }
}
