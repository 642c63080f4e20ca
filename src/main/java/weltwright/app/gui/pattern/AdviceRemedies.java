package weltwright.app.gui.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.job.SheathDesign;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.Severity;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.trace.ProgressListener;
import weltwright.units.MeasureUnit;

/**
 * Finds changes of a sheath that mend what its advice says. Each was tried: the pattern made with it no longer has that
 * advice, and nothing else that must stop the maker.
 */
final class AdviceRemedies {
    // Steps and greatest changes that are tried, chosen by eye.
    private static final double MARGIN_STEP_MM = 0.5;
    private static final double MOST_MARGIN_MM = 6;
    private static final double WIDTH_STEP_MM = 1;
    private static final double MOST_WIDTH_MM = 8;
    private static final double DEPTH_STEP_MM = 5;

    private AdviceRemedies() {}

    /**
     * A change that mends something.
     *
     * @param key of its label in the bundle
     * @param mm the length that the label has; empty where it has none
     */
    record Remedy(String key, OptionalDouble mm, SheathSpec spec) {
        /** Returns the label of its button. */
        String label(MeasureUnit unit) {
            Messages texts = Messages.of(AdviceRemedies.class).withUnit(unit);
            return mm.isPresent() ? texts.text(key, mm.getAsDouble()) : texts.text(key);
        }
    }

    /**
     * Returns the first remedy that holds for each advice that has one. Makes a pattern for each that it tries.
     *
     * @param progress is told before each, and may end the search by an exception
     */
    static Map<Advice, Remedy> of(SheathDesign.Input input, Pattern pattern, ProgressListener progress) {
        Map<Advice, Remedy> remedies = new LinkedHashMap<>();
        for (Advice advice : pattern.advice()) {
            candidates(advice, input)
                    .filter(remedy -> {
                        progress.at("", 0);
                        return mends(advice, pattern, new SheathDesign.Input(input.knife(), remedy.spec()));
                    })
                    .findFirst()
                    .ifPresent(remedy -> remedies.put(advice, remedy));
        }
        return remedies;
    }

    private static boolean mends(Advice advice, Pattern before, SheathDesign.Input changed) {
        try {
            List<Advice> left = changed.design().pattern().advice();
            return left.stream().noneMatch(other -> isSame(advice, other)) && stops(left) <= stops(before.advice());
        } catch (UserFacingException cannotBeMade) {
            return false;
        }
    }

    /** Returns whether two items say the same, if perhaps with other figures. */
    private static boolean isSame(Advice advice, Advice other) {
        if (advice instanceof Advice.PitchFitted row && other instanceof Advice.PitchFitted otherRow) {
            return row.seam() == otherRow.seam();
        }
        return advice.getClass() == other.getClass() && other.severity().compareTo(advice.severity()) <= 0;
    }

    private static long stops(List<Advice> advice) {
        return advice.stream().filter(a -> a.severity() == Severity.STOP).count();
    }

    /** Lists what may mend an advice, the least change first. */
    private static Stream<Remedy> candidates(Advice advice, SheathDesign.Input input) {
        SheathSpec spec = input.spec();
        if (advice instanceof Advice.EdgeNearStitches) {
            return lengths(
                    "remedy.inner-margin",
                    steps(spec.welt().innerMarginMm(), MARGIN_STEP_MM, MOST_MARGIN_MM),
                    mm -> spec.withWelt(spec.welt().withInnerMarginMm(mm)));
        }
        if (advice instanceof Advice.HoldsBladeAlone || advice instanceof Advice.LooseThroat) {
            return Stream.of(plain("remedy.strap", spec.withStrap(Optional.of(HandleStrap.USUAL))));
        }
        if (advice instanceof Advice.NarrowStretch narrow && narrow.severity() == Severity.MIND) {
            return Stream.of(plain("remedy.strap", spec.withStrap(Optional.of(HandleStrap.USUAL))));
        }
        if (advice instanceof Advice.WeltAllRound || advice instanceof Advice.EmptyCorner) {
            return Stream.of(plain("remedy.panels", spec.withKind(SheathKind.PANELS)));
        }
        if (advice instanceof Advice.RivetsAgainstBlade) {
            return Stream.of(
                    plain("remedy.sewn-strap", spec.withBelt(spec.belt().withStyle(BeltAttachment.Style.SEWN_STRAP))));
        }
        if (advice instanceof Advice.TiltLeftOut) {
            return Stream.of(plain("remedy.upright", spec.withCarry(spec.carry().withTiltRad(0))));
        }
        if (advice instanceof Advice.StaysWide wide) {
            return Stream.concat(sharedBulge(wide, spec), lessHandle(input));
        }
        if (advice instanceof Advice.WeltThickness welt && advice.severity() != Severity.NOTE) {
            return otherWeltLeather(welt, spec);
        }
        if (advice instanceof Advice.PitchFitted row && row.seam() == Seam.Kind.BELT_STRAP) {
            double now = spec.belt().strap().widthMm();
            return lengths(
                    "remedy.belt-strap",
                    steps(Math.floor(now), WIDTH_STEP_MM, MOST_WIDTH_MM),
                    mm -> spec.withBelt(
                            spec.belt().withStrap(spec.belt().strap().withWidthMm(mm))));
        }
        return Stream.empty();
    }

    private static Stream<Remedy> sharedBulge(Advice.StaysWide wide, SheathSpec spec) {
        SheathSpec shared = spec.withLeather(spec.leather().withBulge(Leather.Bulge.SHARED));
        return wide.isFaceAlone()
                ? Stream.of(plain("remedy.share", shared))
                : wide.kind() == SheathKind.FOLDED
                        ? Stream.of(plain("remedy.panels", shared.withKind(SheathKind.PANELS)))
                        : Stream.empty();
    }

    private static Stream<Remedy> lessHandle(SheathDesign.Input input) {
        SheathSpec spec = input.spec();
        double held = input.knife().landmarks().heel().x() - spec.depth().throatMm(input.knife());
        return lengths(
                "remedy.less-handle",
                DoubleStream.iterate(
                        Math.floor(held / DEPTH_STEP_MM) * DEPTH_STEP_MM, mm -> mm > 0, mm -> mm - DEPTH_STEP_MM),
                mm -> spec.withDepth(spec.depth().withHandleMm(OptionalDouble.of(mm))));
    }

    /** Lays the welt of the leather that its advice names, too. */
    private static Stream<Remedy> otherWeltLeather(Advice.WeltThickness welt, SheathSpec spec) {
        return welt.nearer().stream()
                .flatMap(stack -> stack.sheets().stream())
                .map(sheets -> sheets.thicknessMm())
                .filter(mm -> !spec.welt().leathersMm().contains(mm)
                        && mm != spec.leather().thicknessMm())
                .map(mm -> {
                    List<Double> leathers = new ArrayList<>(spec.welt().leathersMm());
                    if (leathers.isEmpty()) {
                        leathers.add(spec.leather().thicknessMm());
                    }
                    leathers.add(mm);
                    return new Remedy(
                            "remedy.welt-leather",
                            OptionalDouble.of(mm),
                            spec.withWelt(spec.welt().withLeathersMm(leathers)));
                });
    }

    private static Remedy plain(String key, SheathSpec spec) {
        return new Remedy(key, OptionalDouble.empty(), spec);
    }

    private static Stream<Remedy> lengths(String key, DoubleStream mm, DoubleFunction<SheathSpec> changed) {
        return mm.mapToObj(each -> new Remedy(key, OptionalDouble.of(each), changed.apply(each)));
    }

    /** Returns the steps from a length upwards, without that length. */
    private static DoubleStream steps(double fromMm, double stepMm, double mostMm) {
        return DoubleStream.iterate(fromMm + stepMm, mm -> mm <= fromMm + mostMm, mm -> mm + stepMm);
    }
}
