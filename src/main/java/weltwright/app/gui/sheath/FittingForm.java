package weltwright.app.gui.sheath;

import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.message.Messages;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;

/** The form for how the leather is formed round the knife. */
final class FittingForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(FittingForm.class);

    private static final double ROUNDING = 1e6; // per percent; coarser than the rounding error of the stored fraction

    private final JComboBox<ComboBoxItem<Leather.Bulge>> bulge = ComboBoxItem.create(
            "bulge",
            new ComboBoxItem<>(Leather.Bulge.SHARED, TEXTS.text("fitting-form.face-and-back-alike")),
            new ComboBoxItem<>(Leather.Bulge.FACE, TEXTS.text("fitting-form.the-face-alone-the-back")));
    private final ValidatedField<Double> shrink = FieldFactory.numberWithUnit(SpecFields.FORMING_SHRINK, "%", 0);
    private final ValidatedField<Double> give = FieldFactory.length(SpecFields.FORMING_GIVE, Leather.USUAL_GIVE_MM);
    private final ValidatedField<Double> neutral = FieldFactory.number(SpecFields.NEUTRAL_FACTOR, 0.5);

    FittingForm(JobModel model, FormBinding<SheathSpec> sheath, FormBinding<Leather> leather) {
        super("2 20 8 0");
        addRow(TEXTS.text("fitting-form.bulges"), bulge, TEXTS.text("fitting-form.which-panel-goes-round-the"));
        leather.bind(bulge, Leather::bulge, Leather::withBulge);
        addRow(TEXTS.text("fitting-form.draws-in-by"), shrink, TEXTS.text("fitting-form.by-how-much-the-leather"));
        leather.bind(shrink, FittingForm::percent, (l, to) -> l.withFormingShrink(to / 100));
        addRow(TEXTS.text("fitting-form.gives-by"), give, TEXTS.text("fitting-form.by-how-much-leather-formed"));
        leather.bind(give, Leather::giveMm, Leather::withGiveMm);
        addRow(
                TEXTS.text("fitting-form.neutral-factor-k"),
                neutral,
                TEXTS.text("fitting-form.where-bent-leather-keeps-its"));
        leather.bind(neutral, Leather::neutralFactor, Leather::withNeutralFactor);
        model.subscribe(() -> setRowVisible(bulge, sheath.current().kind() != SheathKind.FOLDED));
    }

    String summary(SheathSpec spec) {
        Leather leather = spec.leather();
        String formed = leather.formingShrink() == 0
                ? TEXTS.text("fitting-form.formed-wet")
                : TEXTS.text(
                        "fitting-form.formed-wet-draws-in-by",
                        shrink.textField().getText());
        boolean flat = spec.kind() != SheathKind.FOLDED && leather.bulge() == Leather.Bulge.FACE;
        return TEXTS.text(
                "fitting-form.summary",
                formed + (flat ? TEXTS.text("fitting-form.flat-back") : ""),
                leather.neutralFactor());
    }

    private static double percent(Leather leather) {
        return Math.round(100 * leather.formingShrink() * ROUNDING) / ROUNDING;
    }
}
