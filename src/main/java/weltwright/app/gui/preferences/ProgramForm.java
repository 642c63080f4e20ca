package weltwright.app.gui.preferences;

import java.util.Optional;
import java.util.prefs.Preferences;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.paper.InstalledPrinters;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.theme.ThemeChoice;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.output.PaperSize;

/** The form of what the program shows and prints: unit, theme, paper and printer. */
final class ProgramForm extends FormPanel {
    private static final Messages MESSAGES = Messages.of(ProgramForm.class);

    private final transient PrinterPreferences printing;
    private final transient Runnable printingListener;
    private final JComboBox<ComboBoxItem<String>> printer = ComboBoxItem.create("preferred printer");
    private final WrappedText noPrinter = new WrappedText(ThemeColors::secondaryText);

    /**
     * @param unitListener called after the unit was changed
     * @param printingListener called after paper or printer were changed
     */
    ProgramForm(Preferences preferences, DisplayUnit unit, Runnable unitListener, Runnable printingListener) {
        super("0 24 0 24");
        this.printingListener = printingListener;
        printing = new PrinterPreferences(preferences);
        JComboBox<ComboBoxItem<Boolean>> units = ComboBoxItem.create(
                "preferred unit",
                new ComboBoxItem<>(false, MESSAGES.text("unit.mm")),
                new ComboBoxItem<>(true, MESSAGES.text("unit.inches")));
        ComboBoxItem.select(units, unit.isInches());
        units.addActionListener(e -> {
            unit.setInches(ComboBoxItem.selected(units));
            unitListener.run();
        });
        JComboBox<ComboBoxItem<Optional<Language>>> language = ComboBoxItem.create(
                "preferred language", new ComboBoxItem<>(Optional.empty(), MESSAGES.text("language.system")));
        for (Language each : Language.values()) {
            language.addItem(new ComboBoxItem<>(Optional.of(each), each.words()));
        }
        ComboBoxItem.select(language, LanguagePreference.load(preferences));
        language.addActionListener(e -> LanguagePreference.store(preferences, ComboBoxItem.selected(language)));
        JComboBox<ComboBoxItem<ThemeChoice>> look = ComboBoxItem.create("preferred look");
        for (ThemeChoice each : ThemeChoice.values()) {
            look.addItem(new ComboBoxItem<>(each, each.label()));
        }
        ComboBoxItem.select(look, ThemeChoice.load(preferences));
        look.addActionListener(e -> ComboBoxItem.selected(look).select(preferences));
        JComboBox<ComboBoxItem<PaperSize>> paper = ComboBoxItem.create("preferred paper");
        for (PaperSize each : PaperSize.values()) {
            paper.addItem(new ComboBoxItem<>(each, each.words()));
        }
        ComboBoxItem.select(paper, printing.paper());
        paper.addActionListener(e -> {
            printing.setPaper(ComboBoxItem.selected(paper));
            printingListener.run();
        });
        noPrinter.setName("no preferred printer");
        noPrinter.showText(MESSAGES.text("printer.searching"));
        printer.setEnabled(false);
        addHeading(MESSAGES.text("program"));
        addRow(MESSAGES.text("unit"), units, MESSAGES.text("unit.tip"));
        addRow(MESSAGES.text("language"), language, MESSAGES.text("language.tip"));
        addText(MESSAGES.text("language.tip"));
        addRow(MESSAGES.text("look"), look, MESSAGES.text("look.tip"));
        addRow(MESSAGES.text("paper"), paper, MESSAGES.text("paper.tip"));
        addRow(MESSAGES.text("printer"), printer, MESSAGES.text("printer.tip"));
        addFullWidth(noPrinter);
    }

    /** Offers the printers that were found. */
    void setPrinters(InstalledPrinters found) {
        found.all().forEach(each -> printer.addItem(new ComboBoxItem<>(each.getName(), each.getName())));
        found.named(printing.printerName()).ifPresent(chosen -> ComboBoxItem.select(printer, chosen.getName()));
        printer.setEnabled(!found.all().isEmpty());
        noPrinter.showText(found.all().isEmpty() ? MESSAGES.text("printer.none") : "");
        printer.addActionListener(e -> {
            printing.setPrinterName(ComboBoxItem.selected(printer));
            printingListener.run();
        });
    }
}
