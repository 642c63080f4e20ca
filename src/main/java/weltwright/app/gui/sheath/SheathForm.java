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
import weltwright.message.Messages;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;

/** The form of the sheath stage: the main choices, and collapsible sections for all others. */
public final class SheathForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(SheathForm.class);

    /** Width and height of the pictures; chosen by eye. */
    static final int PICTURE_PX = 96;

    private final PictureChoice<SheathKind> kind = new PictureChoice<>(
            "body",
            3,
            PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(SheathKind.FOLDED, TEXTS.text("sheath-form.folded-round-the-spine")),
                    new ComboBoxItem<>(SheathKind.PANELS, TEXTS.text("sheath-form.two-panels-welt-all-round")),
                    new ComboBoxItem<>(
                            SheathKind.PANELS_EDGE_WELT, TEXTS.text("sheath-form.two-panels-welt-at-edge"))));
    private final JComboBox<ComboBoxItem<DrawHand>> hand = ComboBoxItem.create(
            "drawn with",
            new ComboBoxItem<>(DrawHand.RIGHT, TEXTS.text("sheath-form.right-hand")),
            new ComboBoxItem<>(DrawHand.LEFT, TEXTS.text("sheath-form.left-hand")));
    private final ValidatedField<OptionalDouble> depth = FieldFactory.optionalLength(SpecFields.HANDLE_DEPTH, mm -> mm);
    private final JComboBox<ComboBoxItem<GuardOpening>> guard = ComboBoxItem.create(
            "guard opening",
            new ComboBoxItem<>(GuardOpening.NONE, TEXTS.text("sheath-form.stays-outside")),
            new ComboBoxItem<>(GuardOpening.OPEN_SIDE, TEXTS.text("sheath-form.goes-in-side-left-open")));
    private final ValidatedField<Double> thickness = FieldFactory.length(SpecFields.LEATHER_THICKNESS, 1);
    private final ValidatedField<Double> ease = FieldFactory.length(SpecFields.EASE, 0);

    /** @param maker returns the maker's leathers and irons, which are offered to choose from */
    public SheathForm(JobModel model, Supplier<MakerDefaults> maker) {
        thickness.withChoices(() -> maker.get().leatherTexts());
        FormBinding<SheathSpec> sheath = new FormBinding<>(model, Job::spec, Job::withSpec);
        FormBinding<CarryPosition> carry = sheath.nested(SheathSpec::carry, SheathSpec::withCarry);
        FormBinding<Leather> leather = sheath.nested(SheathSpec::leather, SheathSpec::withLeather);
        addHeading(TEXTS.text("sheath-form.the-sheath"));
        addPictures(TEXTS.text("sheath-form.body"), kind, TEXTS.text("sheath-form.one-folded-piece-with-a"));
        sheath.bind(kind, SheathSpec::kind, SheathSpec::withKind);
        TaskQueue drawing = new TaskQueue(message -> {});
        ChoicePictures.install(kind, model, drawing, SheathPictures::kinds, SheathPictures::paintKind);
        addRow(TEXTS.text("sheath-form.drawn-with"), hand, TEXTS.text("sheath-form.the-hand-that-draws-the"));
        carry.bind(hand, CarryPosition::hand, CarryPosition::withHand);
        addRow(TEXTS.text("sheath-form.handle-held"), depth, TEXTS.text("sheath-form.how-much-of-the-handle"));
        sheath.bind(
                depth,
                spec -> spec.depth().handleMm(),
                (spec, mm) -> spec.withDepth(spec.depth().withHandleMm(mm)));
        addRow(TEXTS.text("sheath-form.guard"), guard, TEXTS.text("sheath-form.a-guard-goes-in-where"));
        sheath.bind(
                guard,
                spec -> spec.depth().guard(),
                (spec, to) -> spec.withDepth(spec.depth().withGuard(to)));
        addRow(TEXTS.text("sheath-form.leather"), thickness, TEXTS.text("sheath-form.its-thickness-such-as-3"));
        leather.bind(thickness, Leather::thicknessMm, Leather::withThicknessMm);
        addRow(TEXTS.text("sheath-form.ease"), ease, TEXTS.text("sheath-form.air-round-the-knife-so"));
        sheath.bind(ease, SheathSpec::easeMm, SheathSpec::withEaseMm);
        addHeading(TEXTS.text("sheath-form.more-choices"));
        WeltForm welt = new WeltForm(sheath);
        StitchForm stitches = new StitchForm(sheath, maker);
        ThroatForm throat = new ThroatForm(model, sheath, drawing);
        BeltForm belt = new BeltForm(model, sheath, carry, drawing);
        StrapForm strap = new StrapForm(model, sheath, drawing);
        FittingForm fitting = new FittingForm(model, sheath, leather);
        CollapsibleSection weltSection = addSection(TEXTS.text("sheath-form.welt"), welt);
        CollapsibleSection stitchSection = addSection(TEXTS.text("sheath-form.stitches"), stitches);
        CollapsibleSection throatSection = addSection(TEXTS.text("sheath-form.throat-and-tip"), throat);
        CollapsibleSection beltSection = addSection(TEXTS.text("sheath-form.on-the-belt"), belt);
        CollapsibleSection strapSection = addSection(TEXTS.text("sheath-form.strap-round-the-handle"), strap);
        CollapsibleSection fittingSection = addSection(TEXTS.text("sheath-form.leather-round-the-knife"), fitting);
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
