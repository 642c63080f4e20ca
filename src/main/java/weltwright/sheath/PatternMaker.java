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
 * A knife and the maker's choices to a pattern.
 *
 * <ol>
 *   <li>{@link Cavity}: the room that the knife needs to be drawn.
 *   <li>{@link Planform}: cavity, stitch row and outer edge in the knife's plane, where the welt lies.
 *   <li>{@link LeatherDevelopment}: body, or face and back, wrapped over the knife's sections and laid flat.
 *   <li>{@link SheathDraft}: the pieces, their holes and marks, and the seams that join them.
 *   <li>{@link PatternValidator}: nothing is given out that would spoil leather.
 * </ol>
 *
 * The same knife and choices give the same pattern to the last bit.
 */
public final class PatternMaker {
    private PatternMaker() {}

    /**
     * Throws {@link weltwright.error.UserFacingException} where no sheath can be made so, saying which choice to
     * change.
     */
    public static Pattern make(Knife knife, SheathSpec wished) {
        Fit fit = Fit.of(knife, wished);
        return pattern(knife, wished, fit, draft(fit));
    }

    /** The pattern, and with it the sewn sheath to look at; throws as {@link #make} does. */
    public static Made madeUp(Knife knife, SheathSpec wished) {
        Fit fit = Fit.of(knife, wished);
        SheathDraft draft = draft(fit);
        return new Made(
                pattern(knife, wished, fit, draft),
                new SheathSections(knife, fit.spec, fit.cavity, fit.form, fit.welt),
                new SewnPlanView(fit.form.sewn().boundary(), draft.stitchesInPlane()));
    }

    /** A pattern and the sheath that is sewn from it, both from the same steps. */
    public record Made(Pattern pattern, SheathSections sections, SewnPlanView plan) {}

    private static SheathDraft draft(Fit fit) {
        return new SheathDraft(fit.enclosed, fit.spec, fit.cavity, fit.form, fit.welt);
    }

    private static Pattern pattern(Knife knife, SheathSpec wished, Fit fit, SheathDraft draft) {
        DrawCheck check =
                fit.cavity.check(draft.stitchesInPlane(), wished.leather().giveMm());
        List<Seam> seams = draft.seams();
        Pattern pattern = new Pattern(
                draft.pieces(),
                seams,
                draft.fastenings(),
                check,
                sizes(fit.spec, fit.form, draft.belt(), fit.welt),
                PatternAdvisor.of(knife, wished, check, fit.welt, seams, fit.form.openSides(), draft.staysWide()),
                draft.sheathed(knife.outline()));
        return PatternValidator.passed(pattern, fit.spec);
    }

    /** The sewn sheath, to be cut across; throws as {@link #make} does. */
    public static SheathSections sections(Knife knife, SheathSpec wished) {
        Fit fit = Fit.of(knife, wished);
        return new SheathSections(knife, fit.spec, fit.cavity, fit.form, fit.welt);
    }

    /**
     * What pieces and sections both follow from.
     *
     * @param enclosed the knife, without what of its guard stands out through an open side
     */
    private record Fit(Knife enclosed, SheathSpec spec, WeltStack welt, Cavity cavity, Planform form) {
        static Fit of(Knife knife, SheathSpec wished) {
            SpecValidator.check(knife, wished);
            SheathSpec spec = guarded(knife, wished);
            WeltStack welt = WeltStack.of(
                    knife.spineThicknessMm(), spec.welt(), spec.leather().thicknessMm());
            Optional<OutstandingGuard> guard = OutstandingGuard.in(knife, spec);
            Knife enclosed = guard.map(OutstandingGuard::knifeWithout).orElse(knife);
            Cavity cavity = new Cavity(enclosed, spec.depth().throatMm(knife), spec.easeMm());
            return new Fit(enclosed, spec, welt, cavity, new Planform(cavity, spec, welt.thicknessMm(), guard));
        }
    }

    /** An edge on both sides wants a welt on both sides. */
    private static SheathSpec guarded(Knife knife, SheathSpec spec) {
        return knife.doubleEdged() && spec.kind() == SheathKind.PANELS_EDGE_WELT ? spec.with(SheathKind.PANELS) : spec;
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
