package weltwright.sheath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.DrawPath;
import weltwright.fit.Retention;
import weltwright.knife.CrossSection;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.Severity;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.planform.OpenSides;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** Lists the advice on a finished pattern that its maker should read before cutting, the most severe first. */
final class PatternAdvisor {
    /** Multiple of the leather's give from which a narrower stretch of a blade rattles. Chosen by eye. */
    private static final double RATTLES = 2;

    /** An iron still fits a row whose pitch differs by no more than this share of it. Common practice; no source. */
    private static final double IRON_FITS = 0.02;

    /**
     * The spine of a blade falls far, if by more than this share of the blade's height up to so much before the tip.
     * Drop points and clips fall by a quarter, a blade whose spine comes down to a straight edge by more than half.
     * Chosen by eye.
     */
    private static final double FALLS_FAR = 0.5;

    private static final double BEFORE_TIP_MM = 15;

    private PatternAdvisor() {}

    static List<Advice> of(
            Knife knife,
            SheathSpec spec,
            DrawCheck check,
            WeltStack welt,
            List<Seam> seams,
            OpenSides open,
            Optional<Advice.StaysWide> staysWide) {
        List<Advice> advice = new ArrayList<>();
        double blade = knife.spineThicknessMm();
        advice.add(new Advice.WeltThickness(
                welt, blade, welt.nearer(blade, spec.welt(), spec.leather().thicknessMm())));
        if (knife.doubleEdged() && spec.kind() == SheathKind.PANELS_EDGE_WELT) {
            advice.add(new Advice.WeltAllRound());
        }
        path(check.path()).ifPresent(advice::add);
        for (Retention.Narrow narrow : check.grip().narrows()) {
            advice.add(new Advice.NarrowStretch(narrow, check.grip().giveMm(), severity(narrow, check.grip())));
        }
        if (!check.stitchesAreSafe()) {
            advice.add(edgeNearStitches(check));
        }
        open.advice().ifPresent(advice::add);
        advice.addAll(holding(knife, spec, check.grip()));
        advice.addAll(belt(spec));
        staysWide.ifPresent(advice::add);
        emptyCorner(knife, spec).ifPresent(advice::add);
        seams.stream()
                .filter(seam -> seam.pitch().offBy(spec.stitching().pitchMm()) > IRON_FITS)
                .map(seam -> new Advice.PitchFitted(
                        seam.kind(), seam.pitch(), spec.stitching().pitchMm(), seam.holeCount()))
                .forEach(advice::add);
        advice.sort(Comparator.comparing(Advice::severity));
        return advice;
    }

    private static Optional<Advice> path(DrawPath path) {
        if (path instanceof DrawPath.Circular circle) {
            return Optional.of(
                    new Advice.DrawnInArc(circle.radiusMm(), circle.centre().y() > 0 ? Side.SPINE : Side.EDGE));
        }
        double turn = ((DrawPath.Straight) path).towardsSpineRad();
        return turn == 0
                ? Optional.empty()
                : Optional.of(new Advice.DrawnAslant(Math.abs(turn), turn > 0 ? Side.SPINE : Side.EDGE));
    }

    private static Advice edgeNearStitches(DrawCheck check) {
        DrawCheck.Step nearest = check.steps().stream()
                .min(Comparator.comparingDouble(DrawCheck.Step::edgeToStitchMm))
                .orElseThrow();
        return new Advice.EdgeNearStitches(
                check.leastEdgeToStitchMm(), nearest.stitch().x(), DrawCheck.SAFE_EDGE_TO_STITCH_MM);
    }

    /** Returns the severity of a narrow stretch: higher where it leaves a handle unheld or much of a blade loose. */
    private static Severity severity(Retention.Narrow narrow, Retention grip) {
        boolean loose = narrow.part() == CrossSection.Part.HANDLE
                ? grip.isOpen(narrow) && grip.hold() == Retention.Hold.NONE
                : narrow.byMm() > RATTLES * grip.giveMm();
        return loose ? Severity.MIND : Severity.NOTE;
    }

    private static List<Advice> holding(Knife knife, SheathSpec spec, Retention grip) {
        List<Advice> advice = new ArrayList<>();
        double throat = spec.depth().throatMm(knife);
        if (knife.landmarks().guard().filter(g -> g.frontMm() <= throat).isPresent()) {
            advice.add(new Advice.SeatedAtGuard());
        }
        if (spec.strap().isPresent()) {
            advice.add(new Advice.HeldByStrap());
            return advice;
        }
        advice.add(
                switch (grip.hold()) {
                    case FORM ->
                        new Advice.HeldByForm(grip.handleMm(), grip.gripMm(), grip.pushedOpenMm(), grip.giveMm());
                    case FRICTION -> new Advice.HeldByFriction(grip.handleMm(), grip.gripMm());
                    case NONE -> new Advice.LooseThroat(grip.throatMm(), grip.giveMm());
                    case BLADE_ALONE -> new Advice.HoldsBladeAlone();
                });
        return advice;
    }

    private static Optional<Advice> emptyCorner(Knife knife, SheathSpec spec) {
        double height =
                knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
        CrossSections sections = knife.sections();
        // The tip of a job that was edited by hand need not lie on its outline.
        double x = Math.min(
                Math.max(knife.landmarks().heel().x(), knife.landmarks().tip().x() - BEFORE_TIP_MM),
                sections.toMm() - BEFORE_TIP_MM);
        double falls = knife.landmarks().spineStart().y() - sections.at(x).spineMm();
        return spec.kind() == SheathKind.FOLDED && falls > FALLS_FAR * height
                ? Optional.of(new Advice.EmptyCorner(falls))
                : Optional.empty();
    }

    private static List<Advice> belt(SheathSpec spec) {
        BeltAttachment.Style style = spec.belt().style();
        List<Advice> advice = new ArrayList<>();
        if (style == BeltAttachment.Style.RIVETED_STRAP || style == BeltAttachment.Style.HANGING_RING) {
            advice.add(new Advice.RivetsAgainstBlade());
        }
        if (style == BeltAttachment.Style.HANGING_RING && spec.carry().tiltRad() != 0) {
            advice.add(new Advice.TiltLeftOut());
        }
        return advice;
    }
}
