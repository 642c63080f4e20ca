package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import weltwright.measure.LengthField;
import weltwright.sheath.BeltHold;
import weltwright.sheath.Carry;
import weltwright.sheath.Depth;
import weltwright.sheath.Drain;
import weltwright.sheath.GuardOpening;
import weltwright.sheath.Hand;
import weltwright.sheath.HandleStrap;
import weltwright.sheath.Leather;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.Stitching;
import weltwright.sheath.StrapLeather;
import weltwright.sheath.Throat;
import weltwright.sheath.WeltChoice;

/** The sheath's choices in {@link JobDocument}, under the same rules. */
@JsonNaming(SnakeCaseStrategy.class)
record SheathEntry(
        SheathKind kind,
        Hand hand,
        Carry.Edge edge,
        double tilt,
        double leatherThickness,
        double neutralFactor,
        double formingShrink,
        double formingGive,
        Leather.Bulge bulge,
        @JsonSetter(nulls = Nulls.SET) @Nullable Integer weltLayers,
        double weltInnerMargin,
        List<Double> weltLeathers,
        boolean weltInTwo,
        double stitchMargin,
        double pitch,
        int backStitches,
        Throat.Shape throat,
        double throatDepth,
        BeltHold.Style beltHold,
        double beltWidth,
        double beltThickness,
        double beltStrapWidth,
        @JsonSetter(nulls = Nulls.SET) @Nullable Double beltStrapLeather,
        @JsonSetter(nulls = Nulls.SET) @Nullable StrapEntry strap,
        double ease,
        @JsonSetter(nulls = Nulls.SET) @Nullable Double handleDepth,
        GuardOpening guardOpening,
        double drainHole,
        boolean drainEyelet,
        HardwareEntry hardware) {

    static SheathEntry of(SheathSpec spec) {
        return new SheathEntry(
                spec.kind(),
                spec.carry().hand(),
                spec.carry().edge(),
                spec.carry().tiltRad(),
                spec.leather().thicknessMm(),
                spec.leather().neutralFactor(),
                spec.leather().formingShrink(),
                spec.leather().giveMm(),
                spec.leather().bulge(),
                spec.welt().layers().isPresent() ? spec.welt().layers().getAsInt() : null,
                spec.welt().innerMarginMm(),
                spec.welt().leathersMm(),
                spec.welt().inTwo(),
                spec.stitching().marginMm(),
                spec.stitching().pitchMm(),
                spec.stitching().backStitches(),
                spec.throat().shape(),
                spec.throat().depthMm(),
                spec.belt().style(),
                spec.belt().beltWidthMm(),
                spec.belt().beltThicknessMm(),
                spec.belt().strap().widthMm(),
                orNull(spec.belt().strap()),
                spec.strap().map(StrapEntry::of).orElse(null),
                spec.easeMm(),
                spec.depth().handleMm().isPresent() ? spec.depth().handleMm().getAsDouble() : null,
                spec.depth().guard(),
                spec.drain().diameterMm(),
                spec.drain().eyelet(),
                HardwareEntry.of(spec.hardware()));
    }

    SheathSpec spec() {
        return new SheathSpec(
                kind,
                new Carry(hand, edge, checkedTilt()),
                new Leather(
                        Fields.LEATHER_THICKNESS.checkedMm(leatherThickness),
                        Fields.NEUTRAL_FACTOR.checked(neutralFactor),
                        checkedShrink(),
                        bulge,
                        Fields.FORMING_GIVE.checkedMm(formingGive)),
                new WeltChoice(
                        weltLayers == null
                                ? OptionalInt.empty()
                                : OptionalInt.of(Fields.WELT_LAYERS.checked(weltLayers)),
                        Fields.WELT_INNER_MARGIN.checkedMm(weltInnerMargin),
                        weltLeathers.stream()
                                .map(Fields.LEATHER_THICKNESS::checkedMm)
                                .toList(),
                        weltInTwo),
                new Stitching(
                        Fields.STITCH_MARGIN.checkedMm(stitchMargin),
                        Fields.PITCH.checkedMm(pitch),
                        Fields.BACK_STITCHES.checked(backStitches)),
                new Throat(throat, Fields.THROAT_DEPTH.checkedMm(throatDepth)),
                new BeltHold(
                        beltHold,
                        Fields.BELT_WIDTH.checkedMm(beltWidth),
                        Fields.BELT_THICKNESS.checkedMm(beltThickness),
                        new StrapLeather(
                                Fields.BELT_STRAP_WIDTH.checkedMm(beltStrapWidth),
                                leather(beltStrapLeather, Fields.BELT_STRAP_LEATHER))),
                Optional.ofNullable(strap).map(StrapEntry::strap),
                Fields.EASE.checkedMm(ease),
                new Depth(
                        handleDepth == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(Fields.HANDLE_DEPTH.checkedMm(handleDepth)),
                        guardOpening),
                new Drain(Fields.DRAIN_HOLE.checkedMm(drainHole), drainEyelet),
                hardware.list());
    }

    private static @Nullable Double orNull(StrapLeather strap) {
        return strap.thicknessMm().isPresent() ? strap.thicknessMm().getAsDouble() : null;
    }

    private static OptionalDouble leather(@Nullable Double thickness, LengthField field) {
        return thickness == null ? OptionalDouble.empty() : OptionalDouble.of(field.checkedMm(thickness));
    }

    /** Kept in radians, to its last bit; its bounds are told in degrees. */
    private double checkedTilt() {
        Fields.TILT.checked(Math.toDegrees(tilt));
        return tilt;
    }

    private double checkedShrink() {
        Fields.FORMING_SHRINK.checked(100 * formingShrink);
        return formingShrink;
    }

    /** The strap round the handle. */
    @JsonNaming(SnakeCaseStrategy.class)
    record StrapEntry(
            double aboveThroat,
            HandleStrap.Side opens,
            double allowance,
            double width,
            @JsonSetter(nulls = Nulls.SET) @Nullable Double leather) {

        static StrapEntry of(HandleStrap strap) {
            return new StrapEntry(
                    strap.aboveThroatMm(),
                    strap.opens(),
                    strap.allowanceMm(),
                    strap.leather().widthMm(),
                    orNull(strap.leather()));
        }

        HandleStrap strap() {
            return new HandleStrap(
                    Fields.STRAP_HEIGHT.checkedMm(aboveThroat),
                    opens,
                    Fields.STRAP_ALLOWANCE.checkedMm(allowance),
                    new StrapLeather(
                            Fields.STRAP_WIDTH.checkedMm(width), SheathEntry.leather(leather, Fields.STRAP_LEATHER)));
        }
    }
}
