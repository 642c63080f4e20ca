package weltwright.app.gui.paper;

import java.util.ArrayList;
import java.util.List;
import javax.print.PrintService;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.PaperSize;
import weltwright.output.print.PatternDocument;
import weltwright.units.PrintScale;

/** The form of the paper stage: paper, printer and its scale, cutting machine. */
public final class PaperForm extends FormPanel {
    /** "Fit to page" shrinks A4 to the printable area, by 4 % or more; printers that are off are off by 1 %. By eye. */
    private static final double SCALED_BY_DRIVER = 0.03;

    private static final double LEAST_CORRECTION = 0.0005;

    private final transient Messages messages = Messages.of(PaperForm.class);
    private final transient PaperModel paper;
    private final ValidatedField<Double> across;
    private final ValidatedField<Double> down;
    private final WrappedText summary;
    private final JComboBox<ComboBoxItem<PrintService>> printer = new JComboBox<>();
    private final JComboBox<ComboBoxItem<PaperSize>> size = new JComboBox<>();
    private final JButton print;
    private final WrappedText warning = new WrappedText(ThemeColors::warning);
    private final WrappedText noPrinter;
    private final WrappedText correction;
    private boolean updating;

    /**
     * @param savePdf saves the pages
     * @param print prints the chosen pages on the chosen printer
     * @param printerDialog shows the printer's own window first
     */
    public PaperForm(PaperModel paper, Action savePdf, Action print, Action printerDialog, CutterForm cutter) {
        this.paper = paper;
        PrintScale scale = paper.scale();
        across = FieldFactory.printedLength(JobFields.PRINTED_SQUARE_ACROSS, PageFrame.SQUARE_MM * scale.x());
        down = FieldFactory.printedLength(JobFields.PRINTED_SQUARE_DOWN, PageFrame.SQUARE_MM * scale.y());
        for (PaperSize each : PaperSize.values()) {
            size.addItem(new ComboBoxItem<>(each, each.words()));
        }
        ComboBoxItem.select(size, paper.paper());
        size.setName("paper size");
        size.addActionListener(e -> paper.setPaper(ComboBoxItem.selected(size)));
        addHeading(text("form.paper"));
        addRow(text("form.size"), size, text("form.size.tip"));
        summary = addText("");
        summary.setName("pages in all");
        JButton save = new JButton(savePdf);
        save.setName("save pdf");
        addFullWidth(save);

        addHeading(text("form.printing"));
        printer.setName("printer");
        printer.addActionListener(e -> {
            if (!updating && printer.getSelectedIndex() >= 0) {
                paper.setPrinter(ComboBoxItem.selected(printer));
            }
        });
        addRow(text("form.printer"), printer, text("form.printer.tip"));
        noPrinter = addText("");
        noPrinter.setName("no printer");
        JComboBox<ComboBoxItem<PageChoice>> choice = new JComboBox<>();
        for (PageChoice each : PageChoice.values()) {
            choice.addItem(new ComboBoxItem<>(each, text("form.pages." + each.name())));
        }
        choice.setName("pages to print");
        choice.addActionListener(e -> paper.setChoice(ComboBoxItem.selected(choice)));
        addRow(text("form.pages"), choice, text("form.pages.tip"));
        this.print = new JButton(print);
        this.print.setName("print pages");
        this.print.setToolTipText(text("form.print.tip"));
        addFullWidth(this.print);
        JButton dialog = new JButton(printerDialog);
        dialog.setName("printer's own window");
        dialog.setText(text("form.dialog"));
        dialog.setToolTipText(text("form.dialog.tip"));
        addFullWidth(dialog);
        warning.setName("printer warning");
        addFullWidth(warning);

        addHeading(text("form.true"));
        addText(text("form.true.how"));
        addRow(text("form.across"), across, text("form.across.tip"));
        addRow(text("form.down"), down, text("form.down.tip"));
        correction = addText("");
        correction.setName("correction");
        across.onCommit(this::commit);
        down.onCommit(this::commit);
        CollapsibleSection cutterSection = addSection(text("form.cutter"), cutter);
        cutterSection.setSummary(cutter.summary());
        cutter.onChange(() -> cutterSection.setSummary(cutter.summary()));
        addHeading(text("form.before"));
        addText(text("form.before.text"));
        paper.addListener(this::update);
        update();
    }

    private void commit() {
        paper.setScale(new PrintScale(across.value() / PageFrame.SQUARE_MM, down.value() / PageFrame.SQUARE_MM));
    }

    private void update() {
        summary.showText(paper.document().map(this::describe).orElse(""));
        ComboBoxItem.select(size, paper.paper());
        updatePrinters();
        int count = paper.chosenPages().size();
        print.setText(text("form.print", count));
        print.setEnabled(count > 0 && paper.printer().isPresent());
        warning.showText(
                String.join("\n", paper.findings().stream().map(this::describe).toList()));
        correction.showText(describe(paper.scale()));
    }

    private void updatePrinters() {
        List<PrintService> all = paper.printers().map(InstalledPrinters::all).orElse(List.of());
        updating = true;
        List<PrintService> shown = new ArrayList<>();
        for (int i = 0; i < printer.getItemCount(); i++) {
            shown.add(printer.getItemAt(i).value());
        }
        if (!shown.equals(all)) {
            printer.removeAllItems();
            all.forEach(each -> printer.addItem(new ComboBoxItem<>(each, each.getName())));
        }
        paper.printer().ifPresent(chosen -> ComboBoxItem.select(printer, chosen));
        printer.setEnabled(!all.isEmpty());
        updating = false;
        noPrinter.showText(
                paper.printers().isEmpty()
                        ? text("form.printer.searching")
                        : all.isEmpty() ? text("form.printer.noneText") : "");
    }

    private String describe(PatternDocument document) {
        List<String> sentences = new ArrayList<>();
        sentences.add(text("form.summary", document.pages().count(), document.patternPages(), document.cardPages()));
        document.inParts().forEach(part -> sentences.add(text("form.part", part.name(), part.pages())));
        return String.join(" ", sentences);
    }

    private String describe(PrinterFit.Finding finding) {
        if (finding instanceof PrinterFit.NoPaper missing) {
            return text("form.noPaper", missing.size().widthMm(), missing.size().heightMm());
        }
        if (finding instanceof PrinterFit.Scaled scaled) {
            return text("form.scaled", scaled.option());
        }
        PrinterFit.Cut cut = (PrinterFit.Cut) finding;
        return text("form.cut", cut.page() + 1, cut.lostMm());
    }

    private String describe(PrintScale scale) {
        if (Math.abs(scale.x() - 1) < LEAST_CORRECTION && Math.abs(scale.y() - 1) < LEAST_CORRECTION) {
            return text("form.correction.none");
        }
        String told = text("form.correction", correctionOf(scale.x()), correctionOf(scale.y()));
        boolean scaled = Math.max(Math.abs(scale.x() - 1), Math.abs(scale.y() - 1)) > SCALED_BY_DRIVER;
        return scaled ? told + " " + text("form.correction.scaled") : told;
    }

    /** @param scale of the print; the correction is its inverse */
    private String correctionOf(double scale) {
        double percent = 100 * (1 / scale - 1);
        return Math.abs(percent) < 100 * LEAST_CORRECTION
                ? text("form.correction.as")
                : text(percent > 0 ? "form.correction.larger" : "form.correction.smaller", Math.abs(percent));
    }

    private String text(String key, Object... values) {
        return messages.text(key, values);
    }
}
