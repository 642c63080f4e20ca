package weltwright.window;

import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
import weltwright.sheath.Drain;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.Throat;

/** The open end of the sheath, and the hole at its other. */
final class ThroatForm extends Form {
    private final JComboBox<Choice<Throat.Shape>> shape = Choice.box(
            "throat",
            new Choice<>(Throat.Shape.CURVED, "Hollowed in the face"),
            new Choice<>(Throat.Shape.STRAIGHT, "Straight"),
            new Choice<>(Throat.Shape.SLANTED_TO_EDGE, "Slanted, lower at the edge"),
            new Choice<>(Throat.Shape.SLANTED_TO_SPINE, "Slanted, lower at the spine"));
    private final Entry<Double> depth = Lines.length(Fields.THROAT_DEPTH, 0);
    private final JCheckBox eyelet = new JCheckBox("With an eyelet");
    private final Entry<Double> drain = Lines.length(Fields.DRAIN_HOLE, 0);

    ThroatForm(Bench bench, Ties<SheathSpec> sheath) {
        super("2 20 8 0");
        Ties<Throat> throat = sheath.to(SheathSpec::throat, SheathSpec::with);
        line("Throat", (char) 0, shape, "How the open end is cut");
        throat.tie(shape, Throat::shape, (t, to) -> new Throat(to, t.depthMm()));
        line("Depth of the cut", (char) 0, depth, "How far down the hollow or the slant reaches");
        throat.tie(depth, Throat::depthMm, (t, mm) -> new Throat(t.shape(), mm));
        Ties<Drain> hole = sheath.to(SheathSpec::drain, SheathSpec::with);
        eyelet.setName("drain eyelet");
        eyelet.setToolTipText("The eyelet is taken from your hardware, and gives the hole its size");
        line("Drain hole", (char) 0, drain, "Width of the hole at the tip that lets water out; 0 for none");
        hole.tie(drain, Drain::diameterMm, (d, mm) -> new Drain(mm, d.eyelet()));
        line("Lined", (char) 0, eyelet, eyelet.getToolTipText());
        hole.tie(eyelet, Drain::eyelet, (d, lined) -> new Drain(d.diameterMm(), lined));
        bench.watch(() -> {
            showLine(depth, throat.now().shape() != Throat.Shape.STRAIGHT);
            showLine(drain, !hole.now().eyelet());
        });
    }

    String held(SheathSpec spec) {
        Drain hole = spec.drain();
        String drained = hole.eyelet()
                ? "drain hole with an eyelet"
                : hole.diameterMm() == 0
                        ? "no drain hole"
                        : "drain hole " + new Length(hole.diameterMm()).inMillimetres();
        return Choice.lowerCaseWords(shape, spec.throat().shape()) + ", " + drained;
    }
}
