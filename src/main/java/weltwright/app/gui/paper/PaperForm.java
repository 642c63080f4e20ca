package weltwright.app.gui.paper;

import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.job.JobFields;
import weltwright.output.PaperSize;
import weltwright.units.PrintScale;

/** The paper, and how true the printer is. */
public final class PaperForm extends FormPanel {
    private static final double SQUARE_MM = 50;

    private final PrinterPreferences printer;
    private final ValidatedField<Double> across;
    private final ValidatedField<Double> down;

    public PaperForm(PrinterPreferences printer, Action savePdf, Action print, CutterForm cutter) {
        this.printer = printer;
        across = ValidatedFields.length(
                JobFields.PRINTED_SQUARE_ACROSS, SQUARE_MM * printer.scale().x());
        down = ValidatedFields.length(
                JobFields.PRINTED_SQUARE_DOWN, SQUARE_MM * printer.scale().y());
        JComboBox<ComboBoxItem<PaperSize>> size = new JComboBox<>();
        for (PaperSize each : PaperSize.values()) {
            size.addItem(new ComboBoxItem<>(each, each.words()));
        }
        ComboBoxItem.choose(size, printer.paper());
        size.setName("paper size");
        size.addActionListener(e -> printer.paper(ComboBoxItem.chosen(size)));
        heading("The paper");
        line("Paper size", 'Z', size, "Larger patterns go over several pages, to be joined at their marks");
        wide(new JButton(savePdf));
        wide(new JButton(print));
        words("In the printer's own window choose “actual size” or 100 %, never “fit to page”.");
        heading("Is the printer true?");
        words("Measure the 50 mm square on a printed page, both ways, and type what you find: the next print is"
                + " corrected by it. Measure a page that was printed with 50 in both lines.");
        line("Side to side", 'S', across, "What the 50 mm square measures along the page's width");
        line("Top to bottom", 'B', down, "What the 50 mm square measures along the page's height");
        across.onTaken(this::take);
        down.onTaken(this::take);
        CollapsibleSection cutterOut = foldOut("For a cutting machine", 'C', cutter);
        cutterOut.say(cutter.held());
        cutter.onTaken(() -> cutterOut.say(cutter.held()));
        heading("Before you cut");
        words("Check the square on every page. Cut the pattern in card first and try the knife in it, its blade taped."
                + " Try the finished sheath over a soft surface before anybody wears it.");
    }

    private void take() {
        printer.scale(new PrintScale(across.value() / SQUARE_MM, down.value() / SQUARE_MM));
    }
}
