package weltwright.app.gui.leather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.io.FileNames;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.stock.Stock;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.layout.LayoutPdf;
import weltwright.output.layout.QuotePdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.wording.Messages;

/** Saves the layout and the quote, and writes down on the shelf what is cut. */
final class LeatherActions {
    private static final String PDF = "pdf";

    private final Messages messages = Messages.of(LeatherActions.class);
    private final LayoutModel model;
    private final ShelfModel shelf;
    private final PrinterPreferences printer;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final Consumer<String> notifier;
    private final BiConsumer<String, Path> savedNotifier;
    private List<Consumer<StockShelf>> undoOfCut = List.of();

    /** @param savedNotifier shows a message about a saved file */
    LeatherActions(
            LayoutModel model,
            ShelfModel shelf,
            PrinterPreferences printer,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        this.model = model;
        this.shelf = shelf;
        this.printer = printer;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
        this.savedNotifier = savedNotifier;
    }

    /** Saves the shown layouts, each as a file of its own. */
    void saveLayout() {
        List<StockLayout> layouts = model.layouts();
        Job job = model.job();
        PaperSize paper = printer.paper();
        dialogs.chooseSaveFile(
                        messages.text("layout.title"),
                        baseName() + "-layout",
                        messages.text("pdf"),
                        PDF,
                        LayoutPdf.KIND)
                .ifPresent(first -> tasks.submit(
                        messages.text("layout.saving"),
                        () -> {
                            Path file = first;
                            for (StockLayout layout : layouts) {
                                file = layout.equals(layouts.get(0)) ? first : FileNames.unused(file);
                                LayoutPdf.write(layout, job.begun(), paper, file);
                            }
                            return first;
                        },
                        file -> savedNotifier.accept(messages.text("layout.saved", file, layouts.size()), file)));
    }

    /** Saves the quote for one sheath. */
    void saveQuote(Pattern pattern, SheathCost cost) {
        Job job = model.job();
        PageHeading heading = new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
        PaperSize paper = printer.paper();
        dialogs.chooseSaveFile(
                        messages.text("quote.title"), baseName() + "-quote", messages.text("pdf"), PDF, QuotePdf.KIND)
                .ifPresent(file -> tasks.submit(
                        messages.text("quote.saving"),
                        Executors.callable(() -> QuotePdf.write(pattern, cost, heading, paper, file)),
                        done -> savedNotifier.accept(messages.text("quote.saved", file), file)));
    }

    private String baseName() {
        return JobFile.suggestedName(model.job());
    }

    /** Takes what the shown layouts use from the shelf, and puts back what is left of each stock. */
    void cut() {
        List<StockLayout> layouts = model.layouts();
        List<ShelvedStock> stocks = model.input().map(LayoutInput::stocks).orElse(List.of());
        List<Consumer<StockShelf>> undo = new ArrayList<>();
        List<String> left = new ArrayList<>();
        model.markCut();
        boolean done = shelf.change(items -> {
            for (StockLayout layout : layouts) {
                String name = layout.stock().name();
                Optional<Stock> rest = layout.rest();
                if (rest.isPresent()) {
                    items.cut(rest.get());
                    undo.add(each -> each.undo(name));
                    left.add(messages.text("cut.left", name));
                } else {
                    ShelvedStock whole = stocks.stream()
                            .filter(each -> each.name().equals(name))
                            .findFirst()
                            .orElseThrow();
                    items.remove(name);
                    undo.add(each -> each.add(whole));
                    left.add(messages.text("cut.used_up", name));
                }
            }
        });
        if (done) {
            undoOfCut = List.copyOf(undo);
            notifier.accept(messages.text("cut.done", LayoutInput.sheaths(layouts), String.join(" ", left)));
        } else {
            model.takeUpAgain();
        }
    }

    /** Puts the stock back on the shelf as it was before the cut. */
    void undoCut() {
        List<Consumer<StockShelf>> undo = undoOfCut;
        boolean done = shelf.change(items -> IntStream.range(0, undo.size())
                .forEach(i -> undo.get(undo.size() - 1 - i).accept(items)));
        if (done) {
            undoOfCut = List.of();
            model.takeUpAgain();
            notifier.accept(messages.text("cut.undone"));
        }
    }
}
