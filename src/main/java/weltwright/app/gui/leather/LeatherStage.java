package weltwright.app.gui.leather;

import java.awt.Component;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.paper.CutterPreferences;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.job.PhoneLensStore;
import weltwright.sheath.pattern.Pattern;

/** The leather stage: its form and its drawing, connected. */
public final class LeatherStage {
    private final LayoutModel layout;
    private final LeatherForm form;
    private final LeatherPanel panel;
    private final TaskQueue costTasks;

    /**
     * @param parent of dialogs
     * @param lensStore lenses of the phones that took the photos of leather
     * @param pattern returns the pattern of the present job; empty while it is being drawn and where there is none
     * @param patternError returns why there is no pattern; the empty text while it is being drawn
     * @param notifier shows a message to the user
     * @param savedNotifier shows a message about a saved file
     */
    public LeatherStage(
            Component parent,
            JobModel job,
            LeatherFiles files,
            PhoneLensStore lensStore,
            Supplier<Optional<Pattern>> pattern,
            Supplier<String> patternError,
            PrinterPreferences printer,
            CutterPreferences cutter,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        costTasks = new TaskQueue(notifier);
        ShelfModel shelf = new ShelfModel(files.shelf(), notifier);
        PriceListModel prices = new PriceListModel(files.prices(), notifier);
        layout = new LayoutModel(job, shelf, prices, pattern, notifier);
        LeatherActions actions =
                new LeatherActions(layout, shelf, printer, cutter, tasks, dialogs, notifier, savedNotifier);
        StockCards[] cards = new StockCards[1];
        StockEditor editor = new StockEditor(parent, job, files.shelf(), shelf, name -> cards[0].choose(name, true));
        cards[0] = new StockCards(job, shelf, editor);
        Runnable addFromPhoto = () -> new HideDialog(parent, job.unit(), dialogs, lensStore, files.shelf(), name -> {
                    shelf.read();
                    cards[0].choose(name, true);
                })
                .open();
        form = new LeatherForm(job, layout, shelf, prices, editor, addFromPhoto, cards[0], actions, costTasks);
        panel = new LeatherPanel(layout, job, patternError);
    }

    public FormPanel form() {
        return form;
    }

    public LeatherPanel panel() {
        return panel;
    }

    /** How far the layout is. */
    public LayoutProgress progress() {
        return LayoutProgress.of(layout);
    }

    /** Adds a listener that is called whenever {@link #progress} has changed. */
    public void addProgressListener(Runnable listener) {
        LayoutProgress[] told = {progress()};
        layout.addListener(() -> {
            LayoutProgress now = progress();
            if (!now.equals(told[0])) {
                told[0] = now;
                listener.run();
            }
        });
    }

    /** To be called whenever the pattern has changed. */
    public void patternChanged() {
        layout.update();
    }

    /** Ends its threads. */
    public void close() {
        layout.close();
        costTasks.close();
    }
}
