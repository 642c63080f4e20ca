package weltwright.window;

import java.util.OptionalDouble;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.job.Job;
import weltwright.sheath.Carry;
import weltwright.sheath.GuardOpening;
import weltwright.sheath.Hand;
import weltwright.sheath.Leather;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

/** What the maker chooses for the sheath: what every sheath wants first, all else folded in under its name. */
final class SheathForm extends Form {
    private final JComboBox<Choice<SheathKind>> kind = Choice.box(
            "body",
            new Choice<>(SheathKind.FOLDED, "Folded round the spine"),
            new Choice<>(SheathKind.PANELS, "Two panels, welt all round"),
            new Choice<>(SheathKind.PANELS_EDGE_WELT, "Two panels, welt at the edge"));
    private final JComboBox<Choice<Hand>> hand =
            Choice.box("drawn with", new Choice<>(Hand.RIGHT, "Right hand"), new Choice<>(Hand.LEFT, "Left hand"));
    private final Entry<OptionalDouble> depth = Lines.lengthIfAny(Fields.HANDLE_DEPTH, mm -> mm);
    private final JComboBox<Choice<GuardOpening>> guard = Choice.box(
            "guard opening",
            new Choice<>(GuardOpening.NONE, "Stays outside"),
            new Choice<>(GuardOpening.OPEN_SIDE, "Goes in, side left open"));
    private final Entry<Double> thickness = Lines.length(Fields.LEATHER_THICKNESS, 1);
    private final Entry<Double> ease = Lines.length(Fields.EASE, 0);

    SheathForm(Bench bench) {
        Ties<SheathSpec> sheath = new Ties<>(bench, Job::spec, Job::withSpec);
        Ties<Carry> carry = sheath.to(SheathSpec::carry, SheathSpec::with);
        Ties<Leather> leather = sheath.to(SheathSpec::leather, SheathSpec::with);
        heading("The sheath");
        line("Body", 'B', kind, "One folded piece with a welt along the edge, or two panels with a welt all round");
        sheath.tie(kind, SheathSpec::kind, SheathSpec::with);
        line("Drawn with", 'D', hand, "The hand that draws the knife");
        carry.tie(hand, Carry::hand, (c, to) -> new Carry(to, c.edge(), c.tiltRad()));
        line(
                "Handle held",
                'H',
                depth,
                "How much of the handle the sheath holds; 0 seats the knife to its guard. Empty: as"
                        + " the knife wants it, to its guard or a third of its handle");
        sheath.tie(
                depth,
                spec -> spec.depth().handleMm(),
                (spec, mm) -> spec.with(spec.depth().withHandleMm(mm)));
        line(
                "Guard",
                (char) 0,
                guard,
                "A guard goes in where the sheath is left unsewn from the throat down past it; a strap round the handle"
                        + " then holds the knife");
        sheath.tie(
                guard,
                spec -> spec.depth().guard(),
                (spec, to) -> spec.with(spec.depth().with(to)));
        line("Leather", 'T', thickness, "Its thickness, such as 3 mm, 1/8 in or 7/8 oz");
        leather.tie(thickness, Leather::thicknessMm, Leather::withThicknessMm);
        line("Ease", 'A', ease, "Air round the knife, so that it slides; less holds firmer");
        sheath.tie(ease, SheathSpec::easeMm, SheathSpec::withEaseMm);
        heading("More choices");
        WeltForm welt = new WeltForm(sheath);
        StitchForm stitches = new StitchForm(sheath);
        ThroatForm throat = new ThroatForm(bench, sheath);
        BeltForm belt = new BeltForm(bench, sheath, carry);
        StrapForm strap = new StrapForm(bench, sheath);
        FittingForm fitting = new FittingForm(bench, sheath, leather);
        FoldOut weltOut = foldOut("Welt", 'W', welt);
        FoldOut stitchesOut = foldOut("Stitches", 'S', stitches);
        FoldOut throatOut = foldOut("Throat and tip", 'O', throat);
        FoldOut beltOut = foldOut("On the belt", 'L', belt);
        FoldOut strapOut = foldOut("Strap round the handle", 'R', strap);
        FoldOut fittingOut = foldOut("Leather round the knife", 'K', fitting);
        bench.watch(() -> {
            SheathSpec spec = sheath.now();
            boolean guarded = bench.job()
                    .silhouette()
                    .filter(s -> s.landmarks().guard().isPresent())
                    .isPresent();
            showLine(guard, guarded || spec.depth().guard() != GuardOpening.NONE);
            weltOut.say(welt.held(spec.welt()));
            stitchesOut.say(stitches.held(spec.stitching()));
            throatOut.say(throat.held(spec));
            beltOut.say(belt.held(spec));
            strapOut.say(strap.held(spec));
            fittingOut.say(fitting.held(spec));
        });
    }
}
