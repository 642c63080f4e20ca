package weltwright.app.gui.assembled;

import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.MnemonicText;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.job.JobFields;
import weltwright.job.SheathDesign;
import weltwright.message.Messages;

/**
 * A cross-section of the sheath: the field and the canvas that set the station above, the section and its dimensions
 * below.
 */
public final class CrossSectionPanel extends JPanel {
    private static final Messages TEXTS = Messages.of(CrossSectionPanel.class);

    private final StationModel station = new StationModel();
    private final StationCanvas stationCanvas;
    private final CrossSectionCanvas canvas;
    private final DisplayUnit displayUnit;
    private final ValidatedField<Double> stationField = FieldFactory.length(JobFields.STATION, 0);
    private final WrappedText dimensionsText = new WrappedText(ThemeColors::text);

    public CrossSectionPanel(DisplayUnit displayUnit) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.displayUnit = displayUnit;
        stationCanvas = new StationCanvas(station, displayUnit);
        canvas = new CrossSectionCanvas(station, displayUnit);
        JPanel row = new JPanel(new WrappedTextLayout("insets 2 12 6 12, gap 8", "[][110!]12:push[]"));
        JLabel label = MnemonicText.of(TEXTS.text("cross-section-panel.cut-at-from-the-throat"))
                .label();
        label.setLabelFor(stationField.textField());
        stationField.textField().setToolTipText(TEXTS.text("cross-section-panel.or-drag-the-line-along"));
        JLabel help = new JLabel(TEXTS.text("cross-section-panel.drag-the-red-line-or"));
        help.setEnabled(false);
        row.add(label);
        row.add(stationField.textField());
        row.add(help, "wmin 0");
        row.add(stationField.errorText(), "newline, span, growx, wmin 0, hidemode 3");
        dimensionsText.setName("cross-section sizes");
        add(row, "wmin 0");
        add(stationCanvas, "wmin 0, h 84:27%:210");
        add(canvas, "wmin 0, hmin 0, push, grow");
        add(dimensionsText, "wmin 0, gapleft 12, gapright 12, gaptop 6, gapbottom 8, hmin 36");
        stationField.onCommit(() -> station.moveBy(stationField.value() - station.fromThroatMm()));
        station.addListener(this::update);
        displayUnit.addListener(this::update);
    }

    /** Marks a stretch along the knife, and cuts the sheath in its middle. Both are x in mm in the knife's frame. */
    public void mark(double fromMm, double toMm) {
        station.moveTo((fromMm + toMm) / 2);
        stationCanvas.mark(fromMm, toMm);
    }

    public void setDesign(Optional<SheathDesign> design) {
        design.ifPresent(made -> station.setRange(
                made.throatMm(), made.sections().fromMm(), made.sections().toMm()));
        stationCanvas.setDesign(design);
        canvas.setDesign(design);
        update();
    }

    /** Returns the canvas on which the station is moved. */
    public StationCanvas stationCanvas() {
        return stationCanvas;
    }

    public CrossSectionCanvas canvas() {
        return canvas;
    }

    private void update() {
        stationField.setValue(Math.round(10 * station.fromThroatMm()) / 10.0);
        dimensionsText.showText(canvas.dimensions()
                .map(seen -> TEXTS.text(
                        "cross-section-panel.here", String.join("; ", CrossSectionCanvas.describe(seen, displayUnit))))
                .orElse(""));
    }
}
