package weltwright.app.gui.paper;

import java.util.Map;
import java.util.Objects;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;
import weltwright.units.MeasureUnit;

/** The form for the cutting machine: its bed, and buttons for its files. */
public final class CutterForm extends FormPanel {
    private static final Map<LeatherSide, String> SIDE_LABELS =
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
        width = FieldFactory.length(CutterBed.WIDTH, bed.widthMm());
        height = FieldFactory.length(CutterBed.HEIGHT, bed.heightMm());
        for (LeatherSide side : LeatherSide.values()) {
            sideUp.addItem(new ComboBoxItem<>(side, Objects.requireNonNull(SIDE_LABELS.get(side))));
        }
        ComboBoxItem.select(sideUp, bed.sideUp());
        sideUp.setName("side up");
        sideUp.addActionListener(e -> commit());
        width.onCommit(this::commit);
        height.onCommit(this::commit);
        addRow("Width of its bed", 'W', width, "From left to right");
        addRow("Height of its bed", 'T', height, "From front to back");
        addRow(
                "Leather lies up",
                'L',
                sideUp,
                "Grain side: its flaws are seen. Flesh side: folds and notches can be marked where nobody sees them;"
                        + " the pieces are mirrored then");
        addFullWidth(new JButton(saveSvg));
        addFullWidth(new JButton(saveDxf));
        addText(
                "In mm, true to size, without the printer's correction. Each bed holds one thickness of leather. What is"
                        + " cut, punched, marked and written is in layers of its own; the marks for the side that lies down are"
                        + " switched off. Cut the 50 mm square first, and measure it.");
    }

    @Override
    public void setUnit(MeasureUnit newUnit) {
        super.setUnit(newUnit);
        listener.run(); // the summary has lengths
    }

    /** Returns a summary of the bed. */
    String summary() {
        CutterBed bed = cutter.bed();
        return unit().format(bed.widthMm()) + " × " + unit().format(bed.heightMm()) + ", "
                + bed.sideUp().words() + " up";
    }

    /** Sets the listener that is called whenever the user has changed the bed. */
    void onChange(Runnable listener) {
        this.listener = listener;
    }

    private void commit() {
        cutter.setBed(new CutterBed(width.value(), height.value(), ComboBoxItem.selected(sideUp)));
        listener.run();
    }
}
