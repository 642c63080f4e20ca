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
import weltwright.message.Messages;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;
import weltwright.units.MeasureUnit;

/** The form for the cutting machine: its bed, and buttons for its files. */
public final class CutterForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(CutterForm.class);

    private static final Map<LeatherSide, String> SIDE_LABELS = Map.of(
            LeatherSide.GRAIN,
            TEXTS.text("cutter-form.grain-side"),
            LeatherSide.FLESH,
            TEXTS.text("cutter-form.flesh-side"));

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
        addRow(TEXTS.text("cutter-form.width-of-its-bed"), width, TEXTS.text("cutter-form.from-left-to-right"));
        addRow(TEXTS.text("cutter-form.height-of-its-bed"), height, TEXTS.text("cutter-form.from-front-to-back"));
        addRow(TEXTS.text("cutter-form.leather-lies-up"), sideUp, TEXTS.text("cutter-form.grain-side-its-flaws-are"));
        addFullWidth(new JButton(saveSvg));
        addFullWidth(new JButton(saveDxf));
        addText(TEXTS.text("cutter-form.in-mm-true-to-size"));
    }

    @Override
    public void setUnit(MeasureUnit newUnit) {
        super.setUnit(newUnit);
        listener.run(); // the summary has lengths
    }

    /** Returns a summary of the bed. */
    String summary() {
        CutterBed bed = cutter.bed();
        return TEXTS.text(
                "cutter-form.up",
                unit().format(bed.widthMm()),
                unit().format(bed.heightMm()),
                bed.sideUp().words());
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
