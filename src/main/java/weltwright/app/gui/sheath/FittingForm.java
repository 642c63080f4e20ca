package weltwright.app.gui.sheath;

import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.JobFields;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** How the leather goes round the knife. */
final class FittingForm extends FormPanel {
    private static final double MILLIONTHS = 1e6; // of a percent: below what a file's share gives back

    private final JComboBox<ComboBoxItem<Leather.Bulge>> bulge = ComboBoxItem.box(
            "bulge",
            new ComboBoxItem<>(Leather.Bulge.SHARED, "Face and back alike"),
            new ComboBoxItem<>(Leather.Bulge.FACE, "The face alone, the back flat"));
    private final ValidatedField<Double> shrink = ValidatedFields.signed(JobFields.FORMING_SHRINK, "%", 0);
    private final ValidatedField<Double> give = ValidatedFields.length(JobFields.FORMING_GIVE, Leather.USUAL_GIVE_MM);
    private final ValidatedField<Double> neutral = ValidatedFields.number(JobFields.NEUTRAL_FACTOR, 0.5);

    FittingForm(JobModel bench, FormBinding<SheathSpec> sheath, FormBinding<Leather> leather) {
        super("2 20 8 0");
        line("Bulges", (char) 0, bulge, "Which panel goes round the knife where it is thicker than the welt");
        leather.tie(bulge, Leather::bulge, Leather::with);
        line(
                "Draws in by",
                (char) 0,
                shrink,
                "By how much the leather draws together as it dries, formed wet over the knife; about 0 for firm leather");
        leather.tie(shrink, FittingForm::percent, (l, to) -> l.withFormingShrink(to / 100));
        line(
                "Gives by",
                (char) 0,
                give,
                "By how much leather formed to the knife gives where a wider part passes: 1.5 to 2.5 mm, common practice");
        leather.tie(give, Leather::giveMm, Leather::withGiveMm);
        line("Neutral factor K", (char) 0, neutral, "Where bent leather keeps its length: 0 inside, 0.5 in the middle");
        leather.tie(neutral, Leather::neutralFactor, Leather::withNeutralFactor);
        bench.watch(() -> showLine(bulge, sheath.now().kind() != SheathKind.FOLDED));
    }

    String held(SheathSpec spec) {
        Leather leather = spec.leather();
        String formed = "formed wet"
                + (leather.formingShrink() == 0
                        ? ""
                        : ", draws in by " + shrink.field().getText());
        boolean flat = spec.kind() != SheathKind.FOLDED && leather.bulge() == Leather.Bulge.FACE;
        return formed + (flat ? ", flat back" : "") + ", K " + leather.neutralFactor();
    }

    private static double percent(Leather leather) {
        return Math.round(100 * leather.formingShrink() * MILLIONTHS) / MILLIONTHS;
    }
}
