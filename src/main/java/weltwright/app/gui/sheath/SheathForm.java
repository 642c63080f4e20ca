package weltwright.app.gui.sheath;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ChoicePictures;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.PictureChoice;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.job.Job;
import weltwright.job.MakerDefaults;
import weltwright.job.SheathDesign;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;

/** The form of the sheath stage: the main choices, and collapsible sections for all others. */
public final class SheathForm extends FormPanel {
    /** Width and height of the pictures; chosen by eye. */
    static final int PICTURE_PX = 96;

    private final PictureChoice<SheathKind> kind = new PictureChoice<>(
            "body",
            3,
            PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(SheathKind.FOLDED, "Folded round the spine"),
                    new ComboBoxItem<>(SheathKind.PANELS, "Two panels, welt all round"),
                    new ComboBoxItem<>(SheathKind.PANELS_EDGE_WELT, "Two panels, welt at edge")));
    private final JComboBox<ComboBoxItem<DrawHand>> hand = ComboBoxItem.create(
            "drawn with",
            new ComboBoxItem<>(DrawHand.RIGHT, "Right hand"),
            new ComboBoxItem<>(DrawHand.LEFT, "Left hand"));
    private final ValidatedField<OptionalDouble> depth = FieldFactory.optionalLength(SpecFields.HANDLE_DEPTH, mm -> mm);
    private final JComboBox<ComboBoxItem<GuardOpening>> guard = ComboBoxItem.create(
            "guard opening",
            new ComboBoxItem<>(GuardOpening.NONE, "Stays outside"),
            new ComboBoxItem<>(GuardOpening.OPEN_SIDE, "Goes in, side left open"));
    private final ValidatedField<Double> thickness = FieldFactory.length(SpecFields.LEATHER_THICKNESS, 1);
    private final ValidatedField<Double> ease = FieldFactory.length(SpecFields.EASE, 0);

    /** @param maker returns the maker's leathers and irons, which are offered to choose from */
    public SheathForm(JobModel model, Supplier<MakerDefaults> maker) {
        thickness.withChoices(() -> maker.get().leatherTexts());
        FormBinding<SheathSpec> sheath = new FormBinding<>(model, Job::spec, Job::withSpec);
        FormBinding<CarryPosition> carry = sheath.nested(SheathSpec::carry, SheathSpec::withCarry);
        FormBinding<Leather> leather = sheath.nested(SheathSpec::leather, SheathSpec::withLeather);
        addHeading("The sheath");
        addPictures("Body", kind, "One folded piece with a welt along the edge, or two panels with a welt all round");
        sheath.bind(kind, SheathSpec::kind, SheathSpec::withKind);
        TaskQueue drawing = new TaskQueue(message -> {});
        ChoicePictures.install(kind, model, drawing, SheathDesign.Input::of, SheathPictures::paintKind);
        addRow("Drawn with", 'D', hand, "The hand that draws the knife");
        carry.bind(hand, CarryPosition::hand, CarryPosition::withHand);
        addRow(
                "Handle held",
                'N',
                depth,
                "How much of the handle the sheath holds; 0 seats the knife to its guard. Empty: as"
                        + " the knife wants it, to its guard or a third of its handle");
        sheath.bind(
                depth,
                spec -> spec.depth().handleMm(),
                (spec, mm) -> spec.withDepth(spec.depth().withHandleMm(mm)));
        addRow(
                "Guard",
                (char) 0,
                guard,
                "A guard goes in where the sheath is left unsewn from the throat down past it; a strap round the handle"
                        + " then holds the knife");
        sheath.bind(
                guard,
                spec -> spec.depth().guard(),
                (spec, to) -> spec.withDepth(spec.depth().withGuard(to)));
        addRow("Leather", 'T', thickness, "Its thickness, such as 3 mm, 1/8 in or 7/8 oz");
        leather.bind(thickness, Leather::thicknessMm, Leather::withThicknessMm);
        addRow("Ease", 'A', ease, "Air round the knife, so that it slides; less holds firmer");
        sheath.bind(ease, SheathSpec::easeMm, SheathSpec::withEaseMm);
        addHeading("More choices");
        WeltForm welt = new WeltForm(sheath);
        StitchForm stitches = new StitchForm(sheath, maker);
        ThroatForm throat = new ThroatForm(model, sheath, drawing);
        BeltForm belt = new BeltForm(model, sheath, carry, drawing);
        StrapForm strap = new StrapForm(model, sheath, drawing);
        FittingForm fitting = new FittingForm(model, sheath, leather);
        CollapsibleSection weltSection = addSection("Welt", 'W', welt);
        CollapsibleSection stitchSection = addSection("Stitches", 'S', stitches);
        CollapsibleSection throatSection = addSection("Throat and tip", 'O', throat);
        CollapsibleSection beltSection = addSection("On the belt", 'L', belt);
        CollapsibleSection strapSection = addSection("Strap round the handle", 'R', strap);
        CollapsibleSection fittingSection = addSection("Leather round the knife", 'K', fitting);
        model.subscribe(() -> {
            SheathSpec spec = sheath.current();
            boolean guarded = model.job()
                    .silhouette()
                    .filter(s -> s.landmarks().guard().isPresent())
                    .isPresent();
            setRowVisible(guard, guarded || spec.depth().guard() != GuardOpening.NONE);
            weltSection.setSummary(welt.summary(spec.welt()));
            stitchSection.setSummary(stitches.summary(spec.stitching()));
            throatSection.setSummary(throat.summary(spec));
            beltSection.setSummary(belt.summary(spec));
            strapSection.setSummary(strap.summary(spec));
            fittingSection.setSummary(fitting.summary(spec));
        });
    }
}
