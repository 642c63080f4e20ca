package weltwright.app.gui.sheath;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.JobFields;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.StrapLeather;
import weltwright.units.Length;

/** The strap that keeps the knife in. */
final class StrapForm extends FormPanel {
    private final JCheckBox there = new JCheckBox("A strap with a snap");
    private final ValidatedField<Double> height =
            ValidatedFields.length(JobFields.STRAP_HEIGHT, HandleStrap.USUAL.aboveThroatMm());
    private final JComboBox<ComboBoxItem<HandleStrap.Side>> opens = ComboBoxItem.box(
            "strap opens",
            new ComboBoxItem<>(HandleStrap.Side.RIGHT, "On the right"),
            new ComboBoxItem<>(HandleStrap.Side.LEFT, "On the left"));
    private final ValidatedField<Double> allowance =
            ValidatedFields.length(JobFields.STRAP_ALLOWANCE, HandleStrap.USUAL.allowanceMm());

    private final ValidatedField<Double> width =
            ValidatedFields.length(JobFields.STRAP_WIDTH, StrapLeather.HANDLE.widthMm());
    private final ValidatedField<OptionalDouble> leather =
            ValidatedFields.lengthIfAny(JobFields.STRAP_LEATHER, mm -> mm);

    StrapForm(JobModel bench, FormBinding<SheathSpec> sheath) {
        super("2 20 8 0");
        there.setName("strap");
        there.setToolTipText("Goes round the handle and keeps the knife in");
        wide(there);
        sheath.tie(
                there,
                spec -> spec.strap().isPresent(),
                (spec, wanted) -> spec.withStrap(wanted ? Optional.of(HandleStrap.USUAL) : Optional.empty()));
        FormBinding<HandleStrap> strap =
                sheath.to(spec -> spec.strap().orElse(HandleStrap.USUAL), (spec, s) -> spec.withStrap(Optional.of(s)));
        line("Above the throat", (char) 0, height, "From the throat to the middle of the strap");
        strap.tie(
                height,
                HandleStrap::aboveThroatMm,
                (s, mm) -> new HandleStrap(mm, s.opens(), s.allowanceMm(), s.leather()));
        line("Opens", (char) 0, opens, "Where its loose end lies, seen from the face with the tip down");
        strap.tie(
                opens,
                HandleStrap::opens,
                (s, to) -> new HandleStrap(s.aboveThroatMm(), to, s.allowanceMm(), s.leather()));
        line("Allowance", (char) 0, allowance, "How much longer than leather pulled tight round the handle");
        strap.tie(
                allowance,
                HandleStrap::allowanceMm,
                (s, mm) -> new HandleStrap(s.aboveThroatMm(), s.opens(), mm, s.leather()));
        FormBinding<StrapLeather> cut = strap.to(HandleStrap::leather, HandleStrap::with);
        line("Width", (char) 0, width, "Of the strap");
        cut.tie(width, StrapLeather::widthMm, StrapLeather::withWidthMm);
        line("Leather", (char) 0, leather, "Thickness of its leather; empty: cut from the sheath's own");
        cut.tie(leather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        bench.watch(() -> {
            boolean shown = sheath.now().strap().isPresent();
            List.of(height, allowance, width, leather).forEach(entry -> showLine(entry, shown));
            showLine(opens, shown);
        });
    }

    String held(SheathSpec spec) {
        return spec.strap()
                .map(s -> new Length(s.aboveThroatMm()).inMillimetres() + " above the throat, opens "
                        + ComboBoxItem.lowerCaseWords(opens, s.opens()))
                .orElse("none");
    }
}
