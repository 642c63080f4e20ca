package weltwright.sheath;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
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
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;

/** Choices that a maker might make. */
public final class TestSpecs {
    /** A drawer with nothing small in it. */
    private static final HardwareList STOUT = new HardwareList(
            List.of(
                    new Fastener("stout rivet", Hardware.Kind.RIVET, 3.8, 10.5, 3, 16),
                    new Fastener("snap", Hardware.Kind.SNAP, 3.9, 15, 1, 5),
                    new Fastener("eyelet", Hardware.Kind.EYELET, 6.4, 11, 1, 5)),
            List.of(new Ring("ring", 26, 5)));

    private TestSpecs() {}

    /** The standard sheath, but of the blade alone. */
    public static SheathSpec bladeAlone(SheathKind kind) {
        return SheathSpec.standard(kind).withHandleDepthMm(0);
    }

    public static Arbitrary<SheathSpec> any() {
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
                                Arbitraries.doubles().between(0.3, 1.5),
                                depths(),
                                drains(),
                                Arbitraries.of(HardwareList.USUAL, STOUT))
                        .as((ease, depth, drain, hardware) -> new SheathSpec(
                                kind,
                                carry,
                                leather,
                                welt,
                                stitching,
                                throat,
                                belt,
                                depth.guard() == GuardOpening.OPEN_SIDE
                                        ? strap.or(() -> Optional.of(HandleStrap.USUAL))
                                        : strap,
                                ease,
                                strap.isPresent() || depth.guard() == GuardOpening.OPEN_SIDE ? atMost40(depth) : depth,
                                drain,
                                hardware)));
    }

    private static Arbitrary<InsertionDepth> depths() {
        Arbitrary<InsertionDepth> depth = Arbitraries.of(
                InsertionDepth.BY_THE_KNIFE,
                InsertionDepth.ofHandle(0),
                InsertionDepth.ofHandle(12),
                InsertionDepth.ofHandle(40),
                InsertionDepth.ofHandle(70));
        return Combinators.combine(depth, Arbitraries.of(GuardOpening.class)).as(InsertionDepth::withGuard);
    }

    private static InsertionDepth atMost40(InsertionDepth depth) {
        return depth.handleMm().orElse(0) > 40 ? depth.withHandleMm(OptionalDouble.of(40)) : depth;
    }

    private static Arbitrary<CarryPosition> carries() {
        Arbitrary<Double> tilt = Arbitraries.of(0.0, 0.0, 0.15, -0.2);
        return Combinators.combine(Arbitraries.of(DrawHand.class), Arbitraries.of(CarryPosition.Edge.class), tilt)
                .as(CarryPosition::new);
    }

    private static Arbitrary<Leather> leathers() {
        Arbitrary<Double> thickness = Arbitraries.doubles().between(2, 4);
        Arbitrary<Double> neutral = Arbitraries.doubles().between(0.3, 0.7);
        Arbitrary<Double> shrink = Arbitraries.of(0.0, 0.0, 0.03);
        return Combinators.combine(thickness, neutral, shrink, Arbitraries.of(Leather.Bulge.class))
                .as(Leather::new);
    }

    private static Arbitrary<WeltSpec> welts() {
        Arbitrary<OptionalInt> layers =
                Arbitraries.of(OptionalInt.empty(), OptionalInt.of(1), OptionalInt.of(2), OptionalInt.of(4));
        Arbitrary<Double> inner = Arbitraries.doubles().between(3, 6);
        Arbitrary<List<Double>> leathers = Arbitraries.of(List.of(), List.of(2.0, 3.2), List.of(1.6));
        return Combinators.combine(layers, inner, leathers, Arbitraries.of(true, false))
                .as(WeltSpec::new);
    }

    private static Arbitrary<Stitching> stitchings() {
        Arbitrary<Double> margin = Arbitraries.doubles().between(2.5, 5);
        Arbitrary<Double> pitch = Arbitraries.doubles().between(3, 4.5);
        return Combinators.combine(margin, pitch, Arbitraries.of(0, 2, 3))
                .as((edge, iron, back) -> new Stitching(edge, iron, back, OptionalDouble.empty()));
    }

    private static Arbitrary<Throat> throats() {
        return Combinators.combine(
                        Arbitraries.of(Throat.Shape.class),
                        Arbitraries.doubles().between(1, 8))
                .as(Throat::new);
    }

    private static Arbitrary<BeltAttachment> belts() {
        Arbitrary<Double> width = Arbitraries.doubles().between(25, 55);
        Arbitrary<Double> thickness = Arbitraries.doubles().between(3, 5);
        return Combinators.combine(Arbitraries.of(BeltAttachment.Style.class), width, thickness)
                .as(BeltAttachment::new);
    }

    private static Arbitrary<Optional<HandleStrap>> straps() {
        Arbitrary<Double> above = Arbitraries.doubles().between(14, 45);
        Arbitrary<Double> allowance = Arbitraries.doubles().between(0, 4);
        return Combinators.combine(above, Arbitraries.of(HandleStrap.Side.class), allowance)
                .as(HandleStrap::new)
                .optional();
    }

    private static Arbitrary<DrainHole> drains() {
        return Arbitraries.of(DrainHole.NONE, new DrainHole(3, false), new DrainHole(5, false), new DrainHole(4, true));
    }
}
