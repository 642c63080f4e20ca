package weltwright.window;

import java.util.Map;
import java.util.Objects;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.cutter.CutterBed;
import weltwright.cutter.LeatherSide;
import weltwright.measure.Length;

/** The cutting machine's bed, and the files for it. */
final class CutterForm extends Form {
    private static final Map<LeatherSide, String> WORDS =
            Map.of(LeatherSide.GRAIN, "Grain side", LeatherSide.FLESH, "Flesh side");

    private final HomeCutter cutter;
    private final Entry<Double> width;
    private final Entry<Double> height;
    private final JComboBox<Choice<LeatherSide>> sideUp = new JComboBox<>();
    private transient Runnable listener = () -> {};

    CutterForm(HomeCutter cutter, Action saveSvg, Action saveDxf) {
        super("2 20 8 0");
        this.cutter = cutter;
        CutterBed bed = cutter.bed();
        width = Lines.length(CutterBed.WIDTH, bed.widthMm());
        height = Lines.length(CutterBed.HEIGHT, bed.heightMm());
        for (LeatherSide side : LeatherSide.values()) {
            sideUp.addItem(new Choice<>(side, Objects.requireNonNull(WORDS.get(side))));
        }
        Choice.choose(sideUp, bed.sideUp());
        sideUp.setName("side up");
        sideUp.addActionListener(e -> take());
        width.onTaken(this::take);
        height.onTaken(this::take);
        line("Width of its bed", 'W', width, "From left to right");
        line("Height of its bed", 'H', height, "From front to back");
        line(
                "Leather lies up",
                'L',
                sideUp,
                "Grain side: its flaws are seen. Flesh side: folds and notches can be marked where nobody sees them;"
                        + " the pieces are mirrored then");
        wide(new JButton(saveSvg));
        wide(new JButton(saveDxf));
        words("In mm, true to size, without the printer's correction. Each bed holds one thickness of leather. What is"
                + " cut, punched, marked and written is in layers of its own; the marks for the side that lies down are"
                + " switched off. Cut the 50 mm square first, and measure it.");
    }

    /** The bed in a few words. */
    String held() {
        CutterBed bed = cutter.bed();
        return new Length(bed.widthMm()).inMillimetres() + " × " + new Length(bed.heightMm()).inMillimetres() + ", "
                + bed.sideUp().words() + " up";
    }

    /** From now on calls this whenever another bed is told. */
    void onTaken(Runnable listener) {
        this.listener = listener;
    }

    private void take() {
        cutter.bed(new CutterBed(width.value(), height.value(), Choice.chosen(sideUp)));
        listener.run();
    }
}
