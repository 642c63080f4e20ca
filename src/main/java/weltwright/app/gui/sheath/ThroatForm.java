package weltwright.app.gui.sheath;

import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.JobFields;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.units.Length;

/** The open end of the sheath, and the hole at its other. */
final class ThroatForm extends FormPanel {
    private final JComboBox<ComboBoxItem<Throat.Shape>> shape = ComboBoxItem.box(
            "throat",
            new ComboBoxItem<>(Throat.Shape.CURVED, "Hollowed in the face"),
            new ComboBoxItem<>(Throat.Shape.STRAIGHT, "Straight"),
            new ComboBoxItem<>(Throat.Shape.SLANTED_TO_EDGE, "Slanted, lower at the edge"),
            new ComboBoxItem<>(Throat.Shape.SLANTED_TO_SPINE, "Slanted, lower at the spine"));
    private final ValidatedField<Double> depth = ValidatedFields.length(JobFields.THROAT_DEPTH, 0);
    private final JCheckBox eyelet = new JCheckBox("With an eyelet");
    private final ValidatedField<Double> drain = ValidatedFields.length(JobFields.DRAIN_HOLE, 0);

    ThroatForm(JobModel bench, FormBinding<SheathSpec> sheath) {
        super("2 20 8 0");
        FormBinding<Throat> throat = sheath.to(SheathSpec::throat, SheathSpec::with);
        line("Throat", (char) 0, shape, "How the open end is cut");
        throat.tie(shape, Throat::shape, (t, to) -> new Throat(to, t.depthMm()));
        line("Depth of the cut", (char) 0, depth, "How far down the hollow or the slant reaches");
        throat.tie(depth, Throat::depthMm, (t, mm) -> new Throat(t.shape(), mm));
        FormBinding<DrainHole> hole = sheath.to(SheathSpec::drain, SheathSpec::with);
        eyelet.setName("drain eyelet");
        eyelet.setToolTipText("The eyelet is taken from your hardware, and gives the hole its size");
        line("Drain hole", (char) 0, drain, "Width of the hole at the tip that lets water out; 0 for none");
        hole.tie(drain, DrainHole::diameterMm, (d, mm) -> new DrainHole(mm, d.eyelet()));
        line("Lined", (char) 0, eyelet, eyelet.getToolTipText());
        hole.tie(eyelet, DrainHole::eyelet, (d, lined) -> new DrainHole(d.diameterMm(), lined));
        bench.watch(() -> {
            showLine(depth, throat.now().shape() != Throat.Shape.STRAIGHT);
            showLine(drain, !hole.now().eyelet());
        });
    }

    String held(SheathSpec spec) {
        DrainHole hole = spec.drain();
        String drained = hole.eyelet()
                ? "drain hole with an eyelet"
                : hole.diameterMm() == 0
                        ? "no drain hole"
                        : "drain hole " + new Length(hole.diameterMm()).inMillimetres();
        return ComboBoxItem.lowerCaseWords(shape, spec.throat().shape()) + ", " + drained;
    }
}
