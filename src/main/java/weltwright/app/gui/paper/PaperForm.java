package weltwright.app.gui.paper;

import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.job.JobFields;
import weltwright.output.PaperSize;
import weltwright.units.PrintScale;

/** The form of the paper stage: paper, scale of the printer, cutting machine. */
public final class PaperForm extends FormPanel {
    /** Side of the square on each page of a printed pattern. */
    private static final double SQUARE_MM = 50;

    private final PrinterPreferences printer;
    private final ValidatedField<Double> across;
    private final ValidatedField<Double> down;

    public PaperForm(PrinterPreferences printer, Action savePdf, Action print, CutterForm cutter) {
        this.printer = printer;
        across = FieldFactory.printedLength(
                JobFields.PRINTED_SQUARE_ACROSS, SQUARE_MM * printer.scale().x());
        down = FieldFactory.printedLength(
                JobFields.PRINTED_SQUARE_DOWN, SQUARE_MM * printer.scale().y());
        JComboBox<ComboBoxItem<PaperSize>> size = new JComboBox<>();
        for (PaperSize each : PaperSize.values()) {
            size.addItem(new ComboBoxItem<>(each, each.words()));
        }
        ComboBoxItem.select(size, printer.paper());
        size.setName("paper size");
        size.addActionListener(e -> printer.setPaper(ComboBoxItem.selected(size)));
        addHeading("The paper");
        addRow("Paper size", 'Z', size, "Larger patterns go over several pages, to be joined at their marks");
        addFullWidth(new JButton(savePdf));
        addFullWidth(new JButton(print));
        addText("In the printer's own window choose “actual size” or 100 %, never “fit to page”.");
        addHeading("Is the printer true?");
        addText("Measure the 50 mm square on a printed page, both ways, and type what you find: the next print is"
                + " corrected by it. Measure a page that was printed with 50 in both lines.");
        addRow("Side to side", 'S', across, "What the 50 mm square measures along the page's width");
        addRow("Top to bottom", 'B', down, "What the 50 mm square measures along the page's height");
        across.onCommit(this::commit);
        down.onCommit(this::commit);
        CollapsibleSection cutterSection = addSection("For a cutting machine", 'C', cutter);
        cutterSection.setSummary(cutter.summary());
        cutter.onChange(() -> cutterSection.setSummary(cutter.summary()));
        addHeading("Before you cut");
        addText(
                "Check the square on every page. Cut the pattern in card first and try the knife in it, its blade taped."
                        + " Try the finished sheath over a soft surface before anybody wears it.");
    }

    private void commit() {
        printer.setScale(new PrintScale(across.value() / SQUARE_MM, down.value() / SQUARE_MM));
    }
}
