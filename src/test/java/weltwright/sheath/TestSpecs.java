package weltwright.sheath;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Choices that a maker might make. */
public final class TestSpecs {
    private TestSpecs() {}

    public static Arbitrary<SheathSpec> any() {
        return Combinators.combine(
                        Arbitraries.of(SheathKind.class), carries(), leathers(), welts(), stitchings(), throats(),
                        belts(), sizes())
                .as((kind, carry, leather, welt, stitching, throat, belt, r) -> new SheathSpec(
                        kind, carry, leather, welt, stitching, throat, belt, Optional.empty(), r[0], r[1], r[2]));
    }

    /** Folded, or two panels with a welt all round, whole; worn upright by a tail. */
    public static Arbitrary<SheathSpec> plain() {
        return Combinators.combine(any(), Arbitraries.of(SheathKind.FOLDED, SheathKind.PANELS))
                .as((any, kind) -> any.with(kind)
                        .with(new Carry(any.carry().hand(), any.carry().edge(), 0))
                        .with(new WeltChoice(any.welt().layers(), any.welt().innerMarginMm(), List.of(), false))
                        .with(Throat.USUAL)
                        .with(new BeltHold(
                                BeltHold.Style.TAIL, any.belt().beltWidthMm(), any.belt().beltThicknessMm())));
    }

    private static Arbitrary<Carry> carries() {
        Arbitrary<Double> tilt = Arbitraries.of(0.0, 0.0, 0.15, -0.2);
        return Combinators.combine(Arbitraries.of(Hand.class), Arbitraries.of(Carry.Edge.class), tilt)
                .as(Carry::new);
    }

    private static Arbitrary<Leather> leathers() {
        Arbitrary<Double> thickness = Arbitraries.doubles().between(2, 4);
        Arbitrary<Double> neutral = Arbitraries.doubles().between(0.3, 0.7);
        Arbitrary<Double> shrink = Arbitraries.of(0.0, 0.0, 0.03);
        return Combinators.combine(thickness, neutral, shrink, Arbitraries.of(Leather.Bulge.class))
                .as(Leather::new);
    }

    private static Arbitrary<WeltChoice> welts() {
        Arbitrary<OptionalInt> layers =
                Arbitraries.of(OptionalInt.empty(), OptionalInt.of(1), OptionalInt.of(2), OptionalInt.of(4));
        Arbitrary<Double> inner = Arbitraries.doubles().between(3, 6);
        Arbitrary<List<Double>> leathers = Arbitraries.of(List.of(), List.of(2.0, 3.2), List.of(1.6));
        return Combinators.combine(layers, inner, leathers, Arbitraries.of(true, false))
                .as(WeltChoice::new);
    }

    private static Arbitrary<Stitching> stitchings() {
        Arbitrary<Double> margin = Arbitraries.doubles().between(2.5, 5);
        Arbitrary<Double> pitch = Arbitraries.doubles().between(3, 4.5);
        return Combinators.combine(margin, pitch, Arbitraries.of(0, 2, 3)).as(Stitching::new);
    }

    private static Arbitrary<Throat> throats() {
        return Combinators.combine(Arbitraries.of(Throat.Shape.class), Arbitraries.doubles().between(1, 8))
                .as(Throat::new);
    }

    private static Arbitrary<BeltHold> belts() {
        Arbitrary<Double> width = Arbitraries.doubles().between(25, 55);
        Arbitrary<Double> thickness = Arbitraries.doubles().between(3, 5);
        return Combinators.combine(Arbitraries.of(BeltHold.Style.class), width, thickness)
                .as(BeltHold::new);
    }

    /** Ease, depth of the handle, drain hole. */
    private static Arbitrary<double[]> sizes() {
        Arbitrary<Double> ease = Arbitraries.doubles().between(0.3, 1.5);
        Arbitrary<Double> handleDepth = Arbitraries.of(0.0, 0.0, 12.0, 40.0, 70.0);
        Arbitrary<Double> drain = Arbitraries.of(0.0, 3.0, 5.0);
        return Combinators.combine(ease, handleDepth, drain).as((e, d, h) -> new double[] {e, d, h});
    }
}
