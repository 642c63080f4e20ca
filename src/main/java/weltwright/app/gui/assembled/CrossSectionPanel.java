package weltwright.app.gui.assembled;

import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.job.JobFields;
import weltwright.job.SheathDesign;

/**
 * A sheath cut through to look at its stack of layers: above where, below what is seen there, with its sizes in words.
 */
public final class CrossSectionPanel extends JPanel {
    private final StationModel station = new StationModel();
    private final StationCanvas where;
    private final CrossSectionCanvas view;
    private final DisplayUnit ruler;
    private final ValidatedField<Double> place = ValidatedFields.length(JobFields.STATION, 0);
    private final WrappedText sizes = new WrappedText(ThemeColors::text);

    public CrossSectionPanel(DisplayUnit ruler) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.ruler = ruler;
        where = new StationCanvas(station, ruler);
        view = new CrossSectionCanvas(station, ruler);
        JPanel row = new JPanel(new WrappedTextLayout("insets 2 12 6 12, gap 8", "[][130!]push[]"));
        JLabel label = new JLabel("Cut at, from the throat");
        label.setLabelFor(place.field());
        label.setDisplayedMnemonic('U');
        place.field().setToolTipText("Or drag the line along the knife; in the drawings the arrows move it");
        JLabel help = new JLabel("Drag the red line, or press the arrow keys.");
        help.setEnabled(false);
        row.add(label);
        row.add(place.field());
        row.add(help, "wmin 0");
        row.add(place.wrong(), "newline, span, growx, wmin 0, hidemode 3");
        sizes.setName("cross-section sizes");
        add(row, "wmin 0");
        add(where, "wmin 0, h 84:27%:210");
        add(view, "wmin 0, hmin 0, push, grow");
        add(sizes, "wmin 0, gapleft 12, gapright 12, gaptop 6, gapbottom 8, hmin 36");
        place.onTaken(() -> station.step(place.value() - station.fromThroatMm()));
        station.watch(this::look);
        ruler.watch(this::look);
    }

    public void show(Optional<SheathDesign> fitted) {
        fitted.ifPresent(f ->
                station.within(f.throatMm(), f.sections().fromMm(), f.sections().toMm()));
        where.show(fitted);
        view.show(fitted);
        look();
    }

    /** The drawing on which the place is moved. */
    public StationCanvas where() {
        return where;
    }

    public CrossSectionCanvas drawing() {
        return view;
    }

    private void look() {
        place.show(Math.round(10 * station.fromThroatMm()) / 10.0);
        sizes.say(view.sizes()
                .map(seen -> "Here: " + String.join("; ", CrossSectionCanvas.words(seen, ruler)) + ".")
                .orElse(""));
    }
}
