package weltwright.window;

import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
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
    private final Entry<Double> drain = Lines.length(Fields.DRAIN_HOLE, 0);

    ThroatForm(Bench bench, Ties<SheathSpec> sheath) {
        super("2 20 8 0");
        Ties<Throat> throat = sheath.to(SheathSpec::throat, SheathSpec::with);
        line("Throat", (char) 0, shape, "How the open end is cut");
        throat.tie(shape, Throat::shape, (t, to) -> new Throat(to, t.depthMm()));
        line("Depth of the cut", (char) 0, depth, "How far down the hollow or the slant reaches");
        throat.tie(depth, Throat::depthMm, (t, mm) -> new Throat(t.shape(), mm));
        line("Drain hole", (char) 0, drain, "Width of the hole at the tip that lets water out; 0 for none");
        sheath.tie(drain, SheathSpec::drainHoleDiameterMm, SheathSpec::withDrainHoleDiameterMm);
        bench.watch(() -> showLine(depth, throat.now().shape() != Throat.Shape.STRAIGHT));
    }

    String held(SheathSpec spec) {
        double hole = spec.drainHoleDiameterMm();
        return SheathForm.small(Choice.words(shape, spec.throat().shape()))
                + (hole == 0 ? ", no drain hole" : ", drain hole " + new Length(hole).inMillimetres());
    }
}
