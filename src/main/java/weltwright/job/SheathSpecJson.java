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
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.units.LengthField;

/** The {@link SheathSpec} in a {@link JobDocument}, under the rules that are stated there. */
@JsonNaming(SnakeCaseStrategy.class)
record SheathSpecJson(
        SheathKind kind,
        DrawHand hand,
        CarryPosition.Edge edge,
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
        @JsonSetter(nulls = Nulls.SET) @Nullable Double thread,
        Throat.Shape throat,
        double throatDepth,
        BeltAttachment.Style beltHold,
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
        HardwareJson hardware) {

    static SheathSpecJson of(SheathSpec spec) {
        return new SheathSpecJson(
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
                orNull(spec.stitching().threadMm()),
                spec.throat().shape(),
                spec.throat().depthMm(),
                spec.belt().style(),
                spec.belt().beltWidthMm(),
                spec.belt().beltThicknessMm(),
                spec.belt().strap().widthMm(),
                orNull(spec.belt().strap().thicknessMm()),
                spec.strap().map(StrapEntry::of).orElse(null),
                spec.easeMm(),
                orNull(spec.depth().handleMm()),
                spec.depth().guard(),
                spec.drain().diameterMm(),
                spec.drain().eyelet(),
                HardwareJson.of(spec.hardware()));
    }

    SheathSpec spec() {
        return new SheathSpec(
                kind,
                new CarryPosition(hand, edge, checkedTilt()),
                new Leather(
                        SpecFields.LEATHER_THICKNESS.checkedMm(leatherThickness),
                        SpecFields.NEUTRAL_FACTOR.checked(neutralFactor),
                        checkedShrink(),
                        bulge,
                        SpecFields.FORMING_GIVE.checkedMm(formingGive)),
                new WeltSpec(
                        weltLayers == null
                                ? OptionalInt.empty()
                                : OptionalInt.of(SpecFields.WELT_LAYERS.checked(weltLayers)),
                        SpecFields.WELT_INNER_MARGIN.checkedMm(weltInnerMargin),
                        weltLeathers.stream()
                                .map(SpecFields.LEATHER_THICKNESS::checkedMm)
                                .toList(),
                        weltInTwo),
                new Stitching(
                        SpecFields.STITCH_MARGIN.checkedMm(stitchMargin),
                        SpecFields.PITCH.checkedMm(pitch),
                        SpecFields.BACK_STITCHES.checked(backStitches),
                        length(thread, SpecFields.THREAD)),
                new Throat(throat, SpecFields.THROAT_DEPTH.checkedMm(throatDepth)),
                new BeltAttachment(
                        beltHold,
                        SpecFields.BELT_WIDTH.checkedMm(beltWidth),
                        SpecFields.BELT_THICKNESS.checkedMm(beltThickness),
                        new StrapLeather(
                                SpecFields.BELT_STRAP_WIDTH.checkedMm(beltStrapWidth),
                                length(beltStrapLeather, SpecFields.BELT_STRAP_LEATHER))),
                Optional.ofNullable(strap).map(StrapEntry::strap),
                SpecFields.EASE.checkedMm(ease),
                new InsertionDepth(length(handleDepth, SpecFields.HANDLE_DEPTH), guardOpening),
                new DrainHole(SpecFields.DRAIN_HOLE.checkedMm(drainHole), drainEyelet),
                hardware.list());
    }

    private static @Nullable Double orNull(OptionalDouble mm) {
        return mm.isPresent() ? mm.getAsDouble() : null;
    }

    private static OptionalDouble length(@Nullable Double mm, LengthField field) {
        return mm == null ? OptionalDouble.empty() : OptionalDouble.of(field.checkedMm(mm));
    }

    /** The tilt in radians, unchanged; its bounds are in degrees. */
    private double checkedTilt() {
        SpecFields.TILT.checked(Math.toDegrees(tilt));
        return tilt;
    }

    private double checkedShrink() {
        SpecFields.FORMING_SHRINK.checked(100 * formingShrink);
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
                    orNull(strap.leather().thicknessMm()));
        }

        HandleStrap strap() {
            return new HandleStrap(
                    SpecFields.STRAP_HEIGHT.checkedMm(aboveThroat),
                    opens,
                    SpecFields.STRAP_ALLOWANCE.checkedMm(allowance),
                    new StrapLeather(
                            SpecFields.STRAP_WIDTH.checkedMm(width), length(leather, SpecFields.STRAP_LEATHER)));
        }
    }
}
