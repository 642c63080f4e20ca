package weltwright.window;

import java.util.Locale;
import java.util.OptionalInt;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.sheath.Hand;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

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
            bench.change(session, job -> job.withSpec(spec()));
        }
    }

    private SheathSpec spec() {
        return new SheathSpec(
                Choice.chosen(kind),
                Choice.chosen(hand),
                leather.value(),
                Choice.chosen(layers),
                stitchMargin.value(),
                innerMargin.value(),
                ease.value(),
                pitch.value(),
                neutral.value(),
                beltWidth.value(),
                beltThickness.value(),
                depth.value(),
                drain.value());
    }

    private void follow() {
        SheathSpec spec = bench.job().spec();
        showing = true;
        Choice.choose(kind, spec.kind());
        Choice.choose(hand, spec.hand());
        Choice.choose(layers, spec.weltLayers());
        showing = false;
        leather.show(spec.leatherThicknessMm());
        stitchMargin.show(spec.stitchMarginMm());
        innerMargin.show(spec.weltInnerMarginMm());
        ease.show(spec.easeMm());
        pitch.show(spec.pitchMm());
        neutral.show(spec.neutralFactor());
        beltWidth.show(spec.beltWidthMm());
        beltThickness.show(spec.beltThicknessMm());
        depth.show(spec.handleDepthMm());
        drain.show(spec.drainHoleDiameterMm());
    }
}
