package weltwright.app.gui.sheath;

import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;

/** The form for how the leather is formed round the knife. */
final class FittingForm extends FormPanel {
    private static final double ROUNDING = 1e6; // per percent; coarser than the rounding error of the stored fraction

    private final JComboBox<ComboBoxItem<Leather.Bulge>> bulge = ComboBoxItem.create(
            "bulge",
            new ComboBoxItem<>(Leather.Bulge.SHARED, "Face and back alike"),
            new ComboBoxItem<>(Leather.Bulge.FACE, "The face alone, the back flat"));
    private final ValidatedField<Double> shrink = FieldFactory.numberWithUnit(SpecFields.FORMING_SHRINK, "%", 0);
    private final ValidatedField<Double> give = FieldFactory.length(SpecFields.FORMING_GIVE, Leather.USUAL_GIVE_MM);
    private final ValidatedField<Double> neutral = FieldFactory.number(SpecFields.NEUTRAL_FACTOR, 0.5);

    FittingForm(JobModel model, FormBinding<SheathSpec> sheath, FormBinding<Leather> leather) {
        super("2 20 8 0");
        addRow("Bulges", (char) 0, bulge, "Which panel goes round the knife where it is thicker than the welt");
        leather.bind(bulge, Leather::bulge, Leather::withBulge);
        addRow(
                "Draws in by",
                (char) 0,
                shrink,
                "By how much the leather draws together as it dries, formed wet over the knife; about 0 for firm leather");
        leather.bind(shrink, FittingForm::percent, (l, to) -> l.withFormingShrink(to / 100));
        addRow(
                "Gives by",
                (char) 0,
                give,
                "By how much leather formed to the knife gives where a wider part passes: 1.5 to 2.5 mm, common practice");
        leather.bind(give, Leather::giveMm, Leather::withGiveMm);
        addRow(
                "Neutral factor K",
                (char) 0,
                neutral,
                "Where bent leather keeps its length: 0 inside, 0.5 in the middle");
        leather.bind(neutral, Leather::neutralFactor, Leather::withNeutralFactor);
        model.subscribe(() -> setRowVisible(bulge, sheath.current().kind() != SheathKind.FOLDED));
    }

    String summary(SheathSpec spec) {
        Leather leather = spec.leather();
        String formed = "formed wet"
                + (leather.formingShrink() == 0
                        ? ""
                        : ", draws in by " + shrink.textField().getText());
        boolean flat = spec.kind() != SheathKind.FOLDED && leather.bulge() == Leather.Bulge.FACE;
        return formed + (flat ? ", flat back" : "") + ", K " + leather.neutralFactor();
    }

    private static double percent(Leather leather) {
        return Math.round(100 * leather.formingShrink() * ROUNDING) / ROUNDING;
    }
}
