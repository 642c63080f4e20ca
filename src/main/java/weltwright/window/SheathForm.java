package weltwright.window;

import java.util.Locale;
import java.util.OptionalInt;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.sheath.BeltHold;
import weltwright.sheath.Carry;
import weltwright.sheath.Drain;
import weltwright.sheath.Hand;
import weltwright.sheath.Leather;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.Stitching;
import weltwright.sheath.WeltChoice;

/** What the maker chooses for the sheath. */
final class SheathForm extends Form {
    private static final int MOST_LAYERS_OFFERED = 6;

    private final Bench bench;
    private final JComboBox<Choice<SheathKind>> kind = new JComboBox<>();
    private final JComboBox<Choice<Hand>> hand = new JComboBox<>();
    private final JComboBox<Choice<OptionalInt>> layers = new JComboBox<>();
    private final Entry<Double> leather = Lines.length(Fields.LEATHER_THICKNESS, 1);
    private final Entry<Double> stitchMargin = Lines.length(Fields.STITCH_MARGIN, 1);
    private final Entry<Double> innerMargin = Lines.length(Fields.WELT_INNER_MARGIN, 1);
    private final Entry<Double> ease = Lines.length(Fields.EASE, 1);
    private final Entry<Double> pitch = Lines.length(Fields.PITCH, 1);
    private final Entry<Double> beltWidth = Lines.length(Fields.BELT_WIDTH, 1);
    private final Entry<Double> beltThickness = Lines.length(Fields.BELT_THICKNESS, 1);
    private final Entry<Double> depth = Lines.length(Fields.HANDLE_DEPTH, 1);
    private final Entry<Double> drain = Lines.length(Fields.DRAIN_HOLE, 1);
    private final Entry<Double> neutral = Lines.number(Fields.NEUTRAL_FACTOR, 0.5);
    private boolean showing;

    SheathForm(Bench bench) {
        this.bench = bench;
        kind.addItem(new Choice<>(SheathKind.FOLDED, "Folded round the spine"));
        kind.addItem(new Choice<>(SheathKind.PANELS, "Face and back, two panels"));
        kind.addItem(new Choice<>(SheathKind.PANELS_EDGE_WELT, "Two panels, welt along the edge"));
        hand.addItem(new Choice<>(Hand.RIGHT, "Right hand"));
        hand.addItem(new Choice<>(Hand.LEFT, "Left hand"));
        layers.addItem(new Choice<>(OptionalInt.empty(), "As many as needed"));
        for (int n = 1; n <= MOST_LAYERS_OFFERED; n++) {
            layers.addItem(new Choice<>(OptionalInt.of(n), Integer.toString(n)));
        }
        heading("The sheath");
        choice("Body", 'B', kind, "One folded piece with a welt along the edge, or two panels with a welt all round");
        choice("Drawn with", 'D', hand, "The hand that draws the knife");
        line("Handle held", 'H', depth, "How much of the handle the sheath holds; 0 seats the knife to its guard");
        heading("Leather");
        line("Thickness", 'T', leather, "Such as 3 mm, 1/8 in or 7/8 oz");
        choice("Welt layers", 'W', layers, "The strip between edge and stitches; as thick as the blade or thicker");
        line("Ease", 'A', ease, "Air round the blade, all in all");
        heading("Stitches");
        line("From the edge", 'R', stitchMargin, "From the row of stitches to the outer edge");
        line("Inside the row", 'I', innerMargin, "Welt between the blade and the row of stitches");
        line("Stitch length", 'S', pitch, "From hole to hole: the pitch of your iron");
        heading("Belt and drain");
        line("Belt width", 'L', beltWidth, "Of the belt that the loop must pass");
        line("Belt thickness", 'C', beltThickness, "Of that belt");
        line("Drain hole", 'O', drain, "Hole at the tip that lets water out; 0 for none");
        heading("Seldom changed");
        line("Neutral factor K", 'N', neutral, "Where bent leather keeps its length: 0 inside, 0.5 in the middle");
        for (Entry<?> entry : new Entry<?>[] {
            leather, stitchMargin, innerMargin, ease, pitch, beltWidth, beltThickness, depth, drain, neutral
        }) {
            entry.onTaken(() -> take(entry.session()));
        }
        bench.watch(this::follow);
    }

    private void choice(String label, char mnemonic, JComboBox<?> box, String tip) {
        box.setName(label.toLowerCase(Locale.ROOT));
        line(label, mnemonic, box, tip);
        box.addActionListener(e -> take(null));
    }

    private void take(Object session) {
        if (!showing) {
            bench.change(session, job -> job.withSpec(over(job.spec())));
        }
    }

    private SheathSpec over(SheathSpec was) {
        return new SheathSpec(
                Choice.chosen(kind),
                new Carry(Choice.chosen(hand), was.carry().edge(), was.carry().tiltRad()),
                new Leather(leather.value(), neutral.value(), was.leather().formingShrink(), was.leather().bulge()),
                new WeltChoice(
                        Choice.chosen(layers), innerMargin.value(), was.welt().leathersMm(), was.welt().inTwo()),
                new Stitching(stitchMargin.value(), pitch.value(), was.stitching().backStitches()),
                was.throat(),
                new BeltHold(was.belt().style(), beltWidth.value(), beltThickness.value()),
                was.strap(),
                ease.value(),
                depth.value(),
                new Drain(drain.value(), was.drain().eyelet()),
                was.hardware());
    }

    private void follow() {
        SheathSpec spec = bench.job().spec();
        showing = true;
        Choice.choose(kind, spec.kind());
        Choice.choose(hand, spec.carry().hand());
        Choice.choose(layers, spec.welt().layers());
        showing = false;
        leather.show(spec.leather().thicknessMm());
        stitchMargin.show(spec.stitching().marginMm());
        innerMargin.show(spec.welt().innerMarginMm());
        ease.show(spec.easeMm());
        pitch.show(spec.stitching().pitchMm());
        neutral.show(spec.leather().neutralFactor());
        beltWidth.show(spec.belt().beltWidthMm());
        beltThickness.show(spec.belt().beltThicknessMm());
        depth.show(spec.handleDepthMm());
        drain.show(spec.drain().diameterMm());
    }
}
