package weltwright.app.gui.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.print.PrintService;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.message.Messages;
import weltwright.output.PaperSize;
import weltwright.output.print.PatternDocument;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.PrintScale;

/**
 * The pages of the pattern as they will be printed, which of them is looked at, and the printer. Pages are made in the
 * background, and only while the paper stage is visible. Used on the event thread only.
 */
public final class PaperModel {
    private static final Messages TEXTS = Messages.of(PaperModel.class);

    private final PrinterPreferences preferences;
    private final Supplier<InstalledPrinters> printerSearch;
    private final TaskQueue tasks;
    private final DerivedValue<PatternPrintout, PatternDocument> documentValue;
    private final DerivedValue<PatternDocument, List<PageThumbnail>> thumbnailValue;
    private final DerivedValue<FitInput, List<PrinterFit.Finding>> fitValue;
    private final List<Runnable> listeners = new ArrayList<>();
    private DerivedValue.State<PatternDocument> document = new DerivedValue.State<>(Optional.empty(), "", false);
    private List<PageThumbnail> thumbnails = List.of();
    private List<PrinterFit.Finding> findings = List.of();
    private Optional<InstalledPrinters> printers = Optional.empty();
    private Optional<PrintService> printer = Optional.empty();
    private PageChoice choice = PageChoice.ALL;
    private int page;
    private boolean visible;

    /** What the check of a printer follows from. */
    private record FitInput(PrintService printer, List<PageThumbnail> pages) {}

    /**
     * @param pattern returns the pattern of the present job; empty where there is none
     * @param printerSearch finds the printers; called off the event thread
     */
    public PaperModel(
            JobModel model,
            Supplier<Optional<Pattern>> pattern,
            PrinterPreferences preferences,
            Supplier<InstalledPrinters> printerSearch,
            TaskQueue tasks) {
        this.preferences = preferences;
        this.printerSearch = printerSearch;
        this.tasks = tasks;
        documentValue = new DerivedValue<>(
                tasks,
                TEXTS.text("paper-model.laying-out-the-pages"),
                () -> pattern.get().map(made -> PatternPrintout.of(made, model, preferences)),
                PatternPrintout::document,
                this::setDocument);
        thumbnailValue = new DerivedValue<>(
                tasks,
                TEXTS.text("paper-model.drawing-the-pages"),
                () -> document.value(),
                shown -> PageThumbnail.of(shown.pages()),
                this::setThumbnails);
        fitValue = new DerivedValue<>(
                tasks,
                TEXTS.text("paper-model.asking-the-printer"),
                () -> printer.filter(chosen -> !thumbnails.isEmpty()).map(chosen -> new FitInput(chosen, thumbnails)),
                input -> PrinterFit.check(input.printer(), input.pages()),
                this::setFindings);
        model.subscribe(this::update);
    }

    /** Adds a listener that is called whenever something here has changed. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Starts to follow the job, and looks for printers. */
    void show() {
        visible = true;
        update();
        tasks.submit(TEXTS.text("paper-model.looking-for-printers"), printerSearch::get, this::setPrinters);
    }

    /** Ceases to follow the job; what is known stays. */
    void hide() {
        visible = false;
    }

    /** Makes the pages anew where the pattern, the order or the paper have changed. */
    public void update() {
        if (visible) {
            documentValue.update();
        }
    }

    /** Returns the newest pages; empty before the first and where there is no pattern. */
    Optional<PatternDocument> document() {
        return document.value();
    }

    /** Returns whether newer pages are being made. */
    boolean isComputing() {
        return document.computing();
    }

    /** Returns a small image of each page; empty until they are drawn. */
    List<PageThumbnail> thumbnails() {
        return thumbnails;
    }

    /** Returns the index of the page that is shown large. */
    int page() {
        return page;
    }

    void setPage(int newPage) {
        int last = document().map(made -> made.pages().count() - 1).orElse(0);
        int inside = Math.max(0, Math.min(newPage, last));
        if (inside != page) {
            page = inside;
            notifyListeners();
        }
    }

    void setChoice(PageChoice newChoice) {
        choice = newChoice;
        notifyListeners();
    }

    /** Returns the indices of the pages to print. */
    List<Integer> chosenPages() {
        return document().map(made -> choice.pages(made, page)).orElse(List.of());
    }

    PaperSize paper() {
        return preferences.paper();
    }

    void setPaper(PaperSize paper) {
        preferences.setPaper(paper);
        update();
    }

    PrintScale scale() {
        return preferences.scale();
    }

    void setScale(PrintScale scale) {
        preferences.setScale(scale);
        update();
        notifyListeners();
    }

    /** Returns the printers; empty until they are found. */
    Optional<InstalledPrinters> printers() {
        return printers;
    }

    /** Returns the chosen printer; empty where there is none. */
    Optional<PrintService> printer() {
        return printer;
    }

    void setPrinter(PrintService newPrinter) {
        preferences.setPrinterName(newPrinter.getName());
        printer = Optional.of(newPrinter);
        findings = List.of();
        fitValue.update();
        notifyListeners();
    }

    /** Takes paper and printer anew from the preferences, which were changed elsewhere. */
    public void readPreferences() {
        printer = printers.flatMap(found -> found.named(preferences.printerName()));
        findings = List.of();
        fitValue.update();
        update();
        notifyListeners();
    }

    /** Returns why the chosen printer would not print the pages as they are. */
    List<PrinterFit.Finding> findings() {
        return findings;
    }

    private void setPrinters(InstalledPrinters found) {
        printers = Optional.of(found);
        printer = found.named(preferences.printerName());
        fitValue.update();
        notifyListeners();
    }

    private void setDocument(DerivedValue.State<PatternDocument> state) {
        boolean news = !state.value().equals(document.value());
        document = state;
        page = Math.max(
                0,
                Math.min(page, document().map(made -> made.pages().count() - 1).orElse(0)));
        if (news) {
            thumbnails = List.of();
            findings = List.of();
        }
        notifyListeners();
        if (news) {
            thumbnailValue.update();
        }
    }

    private void setThumbnails(DerivedValue.State<List<PageThumbnail>> state) {
        if (!state.computing()) {
            thumbnails = state.value().orElse(List.of());
            fitValue.update();
            notifyListeners();
        }
    }

    private void setFindings(DerivedValue.State<List<PrinterFit.Finding>> state) {
        findings = state.computing() ? List.of() : state.value().orElse(List.of());
        notifyListeners();
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
