package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.fit.Cavity;
import weltwright.fit.DrawCheck;
import weltwright.knife.Knife;
import weltwright.sheath.attachment.BeltLoopDraft;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.planform.LeatherDevelopment;
import weltwright.sheath.planform.OutstandingGuard;
import weltwright.sheath.planform.Planform;
import weltwright.sheath.planform.SewnPlanView;
import weltwright.sheath.planform.SheathSections;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecValidator;

/**
 * Makes the pattern of a sheath from a knife and the maker's choices.
 *
 * <ol>
 *   <li>{@link Cavity}: the room that the knife needs to be drawn.
 *   <li>{@link Planform}: cavity, stitch row and outer edge in the knife's plane, where the welt lies.
 *   <li>{@link FlatLeather}: body, or face and back, wrapped over the knife's sections and laid flat by
 *       {@link LeatherDevelopment}, with the belt attachment on the back.
 *   <li>{@link SheathDraft}: the pieces, their holes and marks, and the seams that join them.
 *   <li>{@link PatternValidator}: a pattern that would spoil leather is refused.
 * </ol>
 *
 * <p>Equal input gives an equal pattern to the last bit.
 */
public final class PatternMaker {
    private PatternMaker() {}

    /**
     * Makes a pattern. Throws {@link weltwright.error.UserFacingException} that names the choice to change where no
     * sheath can be made.
     */
    public static Pattern make(Knife knife, SheathSpec chosen) {
        Fit fit = Fit.of(knife, chosen);
        return pattern(knife, chosen, fit, draft(fit));
    }

    /** Makes a pattern together with the sewn sheath for display; throws as {@link #make} does. */
    public static Made madeUp(Knife knife, SheathSpec chosen) {
        Fit fit = Fit.of(knife, chosen);
        SheathDraft draft = draft(fit);
        return new Made(
                pattern(knife, chosen, fit, draft),
                draft.sections(knife, fit.welt),
                new SewnPlanView(fit.form.sewn().boundary(), draft.stitchesInPlane()));
    }

    /** A pattern and the sheath that is sewn from it. */
    public record Made(Pattern pattern, SheathSections sections, SewnPlanView plan) {}

    private static SheathDraft draft(Fit fit) {
        FlatLeather flat = FlatLeather.of(fit.enclosed.doubleEdged(), fit.spec, fit.cavity, fit.form);
        return new SheathDraft(fit.enclosed, fit.spec, flat, fit.form, fit.welt);
    }

    private static Pattern pattern(Knife knife, SheathSpec chosen, Fit fit, SheathDraft draft) {
        DrawCheck check =
                fit.cavity.check(draft.stitchesInPlane(), chosen.leather().giveMm());
        List<Seam> seams = draft.seams();
        Pattern pattern = new Pattern(
                draft.pieces(),
                seams,
                draft.fastenings(),
                check,
                sizes(fit.spec, fit.form, draft.belt(), fit.welt),
                PatternAdvisor.of(knife, chosen, check, fit.welt, seams, fit.form.openSides(), draft.staysWide()),
                draft.sheathed(knife.outline()));
        return PatternValidator.passed(pattern, fit.spec);
    }

    /**
     * The intermediate results from which pieces and sections follow.
     *
     * @param enclosed the knife without the part of its guard that stands out through an open side
     */
    private record Fit(Knife enclosed, SheathSpec spec, WeltStack welt, Cavity cavity, Planform form) {
        static Fit of(Knife knife, SheathSpec chosen) {
            SpecValidator.check(knife, chosen);
            SheathSpec spec = weltedAllRound(knife, chosen);
            WeltStack welt = WeltStack.of(
                    knife.spineThicknessMm(), spec.welt(), spec.leather().thicknessMm());
            Optional<OutstandingGuard> guard = OutstandingGuard.in(knife, spec);
            Knife enclosed = guard.map(OutstandingGuard::knifeWithout).orElse(knife);
            Cavity cavity = new Cavity(enclosed, spec.depth().throatMm(knife), spec.easeMm());
            return new Fit(enclosed, spec, welt, cavity, new Planform(cavity, spec, welt.thicknessMm(), guard));
        }
    }

    /** Returns the choices with a welt all round for a double-edged knife. */
    private static SheathSpec weltedAllRound(Knife knife, SheathSpec spec) {
        return knife.doubleEdged() && spec.kind() == SheathKind.PANELS_EDGE_WELT
                ? spec.withKind(SheathKind.PANELS)
                : spec;
    }

    private static List<SheathDimension> sizes(SheathSpec spec, Planform form, BeltLoopDraft belt, WeltStack welt) {
        var outer = form.extent();
        double leather = spec.leather().thicknessMm();
        List<SheathDimension> sizes = new ArrayList<>(List.of(
                new SheathDimension(SheathDimension.Kind.LENGTH, outer.getWidth()),
                new SheathDimension(
                        SheathDimension.Kind.LENGTH_WITH_LOOP, outer.getWidth() + belt.aboveThroatMm() + leather),
                new SheathDimension(SheathDimension.Kind.WIDTH, outer.getHeight()),
                new SheathDimension(SheathDimension.Kind.EDGE_THICKNESS, welt.thicknessMm() + 2 * leather),
                new SheathDimension(SheathDimension.Kind.WELT_THICKNESS, welt.thicknessMm()),
                new SheathDimension(SheathDimension.Kind.LOOP_WIDTH, belt.widthMm())));
        spec.strap()
                .ifPresent(strap ->
                        sizes.add(new SheathDimension(SheathDimension.Kind.STRAP_ABOVE_THROAT, strap.aboveThroatMm())));
        return sizes;
    }
}
