package weltwright.app.gui.sheath;

import java.util.OptionalDouble;
import javax.swing.JComboBox;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** What the maker chooses for the sheath: what every sheath wants first, all else folded in under its name. */
public final class SheathForm extends FormPanel {
    private final JComboBox<ComboBoxItem<SheathKind>> kind = ComboBoxItem.box(
            "body",
            new ComboBoxItem<>(SheathKind.FOLDED, "Folded round the spine"),
            new ComboBoxItem<>(SheathKind.PANELS, "Two panels, welt all round"),
            new ComboBoxItem<>(SheathKind.PANELS_EDGE_WELT, "Two panels, welt at the edge"));
    private final JComboBox<ComboBoxItem<DrawHand>> hand = ComboBoxItem.box(
            "drawn with",
            new ComboBoxItem<>(DrawHand.RIGHT, "Right hand"),
            new ComboBoxItem<>(DrawHand.LEFT, "Left hand"));
    private final ValidatedField<OptionalDouble> depth = ValidatedFields.lengthIfAny(JobFields.HANDLE_DEPTH, mm -> mm);
    private final JComboBox<ComboBoxItem<GuardOpening>> guard = ComboBoxItem.box(
            "guard opening",
            new ComboBoxItem<>(GuardOpening.NONE, "Stays outside"),
            new ComboBoxItem<>(GuardOpening.OPEN_SIDE, "Goes in, side left open"));
    private final ValidatedField<Double> thickness = ValidatedFields.length(JobFields.LEATHER_THICKNESS, 1);
    private final ValidatedField<Double> ease = ValidatedFields.length(JobFields.EASE, 0);

    public SheathForm(JobModel bench) {
        FormBinding<SheathSpec> sheath = new FormBinding<>(bench, Job::spec, Job::withSpec);
        FormBinding<CarryPosition> carry = sheath.to(SheathSpec::carry, SheathSpec::with);
        FormBinding<Leather> leather = sheath.to(SheathSpec::leather, SheathSpec::with);
        heading("The sheath");
        line("Body", 'B', kind, "One folded piece with a welt along the edge, or two panels with a welt all round");
        sheath.tie(kind, SheathSpec::kind, SheathSpec::with);
        line("Drawn with", 'D', hand, "The hand that draws the knife");
        carry.tie(hand, CarryPosition::hand, (c, to) -> new CarryPosition(to, c.edge(), c.tiltRad()));
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
        CollapsibleSection weltOut = foldOut("Welt", 'W', welt);
        CollapsibleSection stitchesOut = foldOut("Stitches", 'S', stitches);
        CollapsibleSection throatOut = foldOut("Throat and tip", 'O', throat);
        CollapsibleSection beltOut = foldOut("On the belt", 'L', belt);
        CollapsibleSection strapOut = foldOut("Strap round the handle", 'R', strap);
        CollapsibleSection fittingOut = foldOut("Leather round the knife", 'K', fitting);
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
