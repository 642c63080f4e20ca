package weltwright.sheath;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tuple;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.units.LengthField;
import weltwright.units.NumberField;

/**
 * Every choice over all of its allowed range, each by itself, sensible together or not. Each choice is in three of five
 * cases a usual one, so that the odd ones meet sheaths that could otherwise be made.
 */
final class AllowedSpecs {
    private AllowedSpecs() {}

    static Arbitrary<SheathSpec> any() {
        return Combinators.combine(
                        Arbitraries.of(SheathKind.class),
                        carries(),
                        leathers(),
                        welts(),
                        stitchings(),
                        throats(),
                        belts(),
                        straps())
                .flatAs((kind, carry, leather, welt, stitching, throat, belt, strap) -> Combinators.combine(
                                mostly(0.8, SpecFields.EASE), depths(), drains())
                        .as((ease, depth, drain) -> new SheathSpec(
                                kind,
                                carry,
                                leather,
                                welt,
                                stitching,
                                throat,
                                belt,
                                strap,
                                ease,
                                depth,
                                drain,
                                HardwareList.USUAL)));
    }

    private static Arbitrary<CarryPosition> carries() {
        Arbitrary<Double> tilt = mostly(0, SpecFields.TILT).map(Math::toRadians);
        return Combinators.combine(Arbitraries.of(DrawHand.class), Arbitraries.of(CarryPosition.Edge.class), tilt)
                .as(CarryPosition::new);
    }

    private static Arbitrary<Leather> leathers() {
        Arbitrary<Double> shrink = mostly(0, SpecFields.FORMING_SHRINK).map(percent -> percent / 100);
        return Combinators.combine(
                        mostly(3, SpecFields.LEATHER_THICKNESS),
                        mostly(0.5, SpecFields.NEUTRAL_FACTOR),
                        shrink,
                        Arbitraries.of(Leather.Bulge.class))
                .as(Leather::new);
    }

    private static Arbitrary<WeltSpec> welts() {
        Arbitrary<OptionalInt> layers = Arbitraries.frequencyOf(
                Tuple.of(3, Arbitraries.just(OptionalInt.empty())),
                Tuple.of(
                        2,
                        Arbitraries.integers()
                                .between((int) SpecFields.WELT_LAYERS.least(), (int) SpecFields.WELT_LAYERS.greatest())
                                .map(OptionalInt::of)));
        Arbitrary<List<Double>> leathers = Arbitraries.frequencyOf(
                Tuple.of(3, Arbitraries.just(List.of())),
                Tuple.of(
                        2,
                        even(SpecFields.LEATHER_THICKNESS.leastMm(), SpecFields.LEATHER_THICKNESS.greatestMm())
                                .list()
                                .ofMinSize(1)
                                .ofMaxSize(3)));
        return Combinators.combine(
                        layers, mostly(4, SpecFields.WELT_INNER_MARGIN), leathers, Arbitraries.of(true, false))
                .as(WeltSpec::new);
    }

    private static Arbitrary<Stitching> stitchings() {
        return Combinators.combine(
                        mostly(Stitching.USUAL.marginMm(), SpecFields.STITCH_MARGIN),
                        mostly(4, SpecFields.PITCH),
                        Arbitraries.integers().between(0, 6))
                .as((edge, iron, back) -> new Stitching(edge, iron, back, OptionalDouble.empty()));
    }

    private static Arbitrary<Throat> throats() {
        return Combinators.combine(Arbitraries.of(Throat.Shape.class), mostly(4, SpecFields.THROAT_DEPTH))
                .as(Throat::new);
    }

    private static Arbitrary<BeltAttachment> belts() {
        return Combinators.combine(
                        Arbitraries.of(BeltAttachment.Style.class),
                        mostly(38, SpecFields.BELT_WIDTH),
                        mostly(4, SpecFields.BELT_THICKNESS))
                .as(BeltAttachment::new);
    }

    private static Arbitrary<Optional<HandleStrap>> straps() {
        return Combinators.combine(
                        mostly(20, LengthField.of("height of the strap", 5, 120)),
                        Arbitraries.of(HandleStrap.Side.class),
                        mostly(1, SpecFields.STRAP_ALLOWANCE))
                .as(HandleStrap::new)
                .optional();
    }

    private static Arbitrary<InsertionDepth> depths() {
        Arbitrary<InsertionDepth> depth = Arbitraries.frequencyOf(
                Tuple.of(1, Arbitraries.just(InsertionDepth.BY_THE_KNIFE)),
                Tuple.of(1, Arbitraries.just(InsertionDepth.ofHandle(0))),
                Tuple.of(3, even(0, 90).map(InsertionDepth::ofHandle)));
        return Combinators.combine(depth, Arbitraries.of(GuardOpening.class)).as(InsertionDepth::withGuard);
    }

    private static Arbitrary<DrainHole> drains() {
        return Arbitraries.frequencyOf(
                Tuple.of(2, Arbitraries.just(DrainHole.USUAL)),
                Tuple.of(1, Arbitraries.of(DrainHole.NONE, new DrainHole(4, true))),
                Tuple.of(1, even(1, 10).map(mm -> new DrainHole(mm, false))));
    }

    private static Arbitrary<Double> mostly(double usual, LengthField field) {
        return mostly(usual, field.leastMm(), field.greatestMm());
    }

    private static Arbitrary<Double> mostly(double usual, NumberField field) {
        return mostly(usual, field.least(), field.greatest());
    }

    private static Arbitrary<Double> mostly(double usual, double least, double greatest) {
        return Arbitraries.frequencyOf(Tuple.of(3, Arbitraries.just(usual)), Tuple.of(2, even(least, greatest)));
    }

    private static Arbitrary<Double> even(double least, double greatest) {
        return Arbitraries.doubles().between(least, greatest).ofScale(2).withDistribution(RandomDistribution.uniform());
    }
}
