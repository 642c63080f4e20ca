package weltwright.app.gui.leather;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.paper.CutterPreferences;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.io.FileKind;
import weltwright.io.FileNames;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.OffcutShape;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.cutter.LeatherSide;
import weltwright.output.layout.LayoutPdf;
import weltwright.output.layout.QuotePdf;
import weltwright.output.print.LayoutPagesPdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.PrintScale;

/** Saves the layout and the quote, and writes down on the shelf what is cut. */
final class LeatherActions {
    private final Messages messages = Messages.of(LeatherActions.class);
    private final LayoutModel model;
    private final ShelfModel shelf;
    private final PrinterPreferences printer;
    private final CutterPreferences cutter;
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
            CutterPreferences cutter,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        this.model = model;
        this.shelf = shelf;
        this.printer = printer;
        this.cutter = cutter;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
        this.savedNotifier = savedNotifier;
    }

    /** Saves an overview of each of the shown layouts, each in a file of its own. */
    void saveLayout() {
        LocalDate day = model.job().begun();
        PaperSize paper = printer.paper();
        save("layout", "pdf", LayoutPdf.KIND, (layout, file) -> LayoutPdf.write(layout, day, paper, file));
    }

    /** Saves each of the shown layouts true to size over pages that are joined, each in a file of its own. */
    void savePages() {
        PageHeading heading = heading();
        PaperSize paper = printer.paper();
        PrintScale scale = printer.scale();
        save(
                "pages",
                "pdf",
                LayoutPagesPdf.KIND,
                (layout, file) -> LayoutPagesPdf.write(layout, heading, paper, scale, file));
    }

    /** Saves each of the shown layouts as SVG, with the side of the leather up that the cutting machine's bed has. */
    void saveSvg() {
        saveForMachine("svg", CutterSvg.KIND, CutterSvg::write);
    }

    /** Saves each of the shown layouts as DXF, like {@link #saveSvg}. */
    void saveDxf() {
        saveForMachine("dxf", CutterDxf.KIND, CutterDxf::write);
    }

    private void saveForMachine(String format, FileKind kind, BiConsumer<CutPlan, Path> writer) {
        PageHeading heading = heading();
        LeatherSide sideUp = cutter.bed().sideUp();
        save(format, format, kind, (layout, file) -> writer.accept(CutPlan.of(layout, sideUp, heading), file));
    }

    /**
     * @param key of the messages
     * @param extension of the files
     */
    private void save(String key, String extension, FileKind kind, BiConsumer<StockLayout, Path> writer) {
        List<StockLayout> layouts = model.layouts();
        dialogs.chooseSaveFile(
                        messages.text(key + ".title"),
                        baseName() + (key.equals("pages") ? "-pages" : "-layout"),
                        messages.text(extension),
                        extension,
                        kind)
                .ifPresent(first -> tasks.submit(
                        messages.text(key + ".saving"),
                        () -> {
                            Path file = first;
                            for (StockLayout layout : layouts) {
                                file = layout.equals(layouts.get(0)) ? first : FileNames.unused(first);
                                writer.accept(layout, file);
                            }
                            return first;
                        },
                        file -> savedNotifier.accept(messages.text(key + ".saved", file, layouts.size()), file)));
    }

    /** Saves the quote for one sheath. */
    void saveQuote(Pattern pattern, SheathCost cost) {
        PageHeading heading = heading();
        PaperSize paper = printer.paper();
        dialogs.chooseSaveFile(
                        messages.text("quote.title"), baseName() + "-quote", messages.text("pdf"), "pdf", QuotePdf.KIND)
                .ifPresent(file -> tasks.submit(
                        messages.text("quote.saving"),
                        Executors.callable(() -> QuotePdf.write(pattern, cost, heading, paper, file)),
                        done -> savedNotifier.accept(messages.text("quote.saved", file), file)));
    }

    private PageHeading heading() {
        Job job = model.job();
        return new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
    }

    private String baseName() {
        return JobFile.suggestedName(model.job());
    }

    /**
     * Takes what the shown layouts use from the shelf, and puts back what is left of each stock.
     *
     * @param offcut how what is left is made into one piece
     */
    void cut(OffcutShape offcut) {
        List<StockLayout> layouts = model.layouts();
        List<ShelvedStock> stocks = model.input().map(LayoutInput::stocks).orElse(List.of());
        List<Consumer<StockShelf>> undo = new ArrayList<>();
        List<String> left = new ArrayList<>();
        model.markCut();
        boolean done = shelf.change(items -> {
            for (StockLayout layout : layouts) {
                String name = layout.stock().name();
                Optional<Stock> rest = layout.rest(offcut);
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
