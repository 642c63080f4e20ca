package weltwright.app.gui.paper;

import java.util.Map;
import java.util.Objects;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;
import weltwright.units.Length;

/** The cutting machine's bed, and the files for it. */
public final class CutterForm extends FormPanel {
    private static final Map<LeatherSide, String> WORDS =
            Map.of(LeatherSide.GRAIN, "Grain side", LeatherSide.FLESH, "Flesh side");

    private final CutterPreferences cutter;
    private final ValidatedField<Double> width;
    private final ValidatedField<Double> height;
    private final JComboBox<ComboBoxItem<LeatherSide>> sideUp = new JComboBox<>();
    private transient Runnable listener = () -> {};

    public CutterForm(CutterPreferences cutter, Action saveSvg, Action saveDxf) {
        super("2 20 8 0");
        this.cutter = cutter;
        CutterBed bed = cutter.bed();
        width = ValidatedFields.length(CutterBed.WIDTH, bed.widthMm());
        height = ValidatedFields.length(CutterBed.HEIGHT, bed.heightMm());
        for (LeatherSide side : LeatherSide.values()) {
            sideUp.addItem(new ComboBoxItem<>(side, Objects.requireNonNull(WORDS.get(side))));
        }
        ComboBoxItem.choose(sideUp, bed.sideUp());
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
        cutter.bed(new CutterBed(width.value(), height.value(), ComboBoxItem.chosen(sideUp)));
        listener.run();
    }
}
