package weltwright.sheath;

import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Choices that a maker might make. */
public final class TestSpecs {
    private TestSpecs() {}

    public static Arbitrary<SheathSpec> any() {
        Arbitrary<SheathKind> kind = Arbitraries.of(SheathKind.class);
        Arbitrary<Hand> hand = Arbitraries.of(Hand.class);
        Arbitrary<Double> leather = Arbitraries.doubles().between(2, 4);
        Arbitrary<OptionalInt> layers =
                Arbitraries.of(OptionalInt.empty(), OptionalInt.of(1), OptionalInt.of(2), OptionalInt.of(4));
        Arbitrary<Double> margin = Arbitraries.doubles().between(2.5, 5);
        Arbitrary<Double> inner = Arbitraries.doubles().between(3, 6);
        Arbitrary<Double> ease = Arbitraries.doubles().between(0.3, 1.5);
        Arbitrary<Double> pitch = Arbitraries.doubles().between(3, 4.5);
        return Combinators.combine(kind, hand, leather, layers, margin, inner, ease, pitch)
                .flatAs((k, h, t, n, m, i, e, p) -> rest().map(r ->
                        new SheathSpec(k, h, t, n, m, i, e, p, r[0], r[1], r[2], r[3], r[4])));
    }

    private static Arbitrary<double[]> rest() {
        Arbitrary<Double> neutral = Arbitraries.doubles().between(0.3, 0.7);
        Arbitrary<Double> beltWidth = Arbitraries.doubles().between(25, 55);
        Arbitrary<Double> beltThickness = Arbitraries.doubles().between(3, 5);
        Arbitrary<Double> handleDepth = Arbitraries.of(0.0, 0.0, 12.0, 40.0, 70.0);
        Arbitrary<Double> drain = Arbitraries.of(0.0, 3.0, 5.0);
        return Combinators.combine(neutral, beltWidth, beltThickness, handleDepth, drain)
                .as((k, w, t, d, h) -> new double[] {k, w, t, d, h});
    }
}
