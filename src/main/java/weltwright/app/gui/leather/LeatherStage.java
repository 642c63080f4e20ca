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
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.sheath.pattern.Pattern;

/** The leather stage: its form and its drawing, connected. */
public final class LeatherStage {
    private final LayoutModel layout;
    private final LeatherForm form;
    private final LeatherPanel panel;
    private final TaskQueue costTasks;

    /**
     * @param parent of dialogs
     * @param pattern returns the pattern of the present job; empty while it is being drawn and where there is none
     * @param patternError returns why there is no pattern; the empty text while it is being drawn
     * @param notifier shows a message to the user
     * @param savedNotifier shows a message about a saved file
     */
    public LeatherStage(
            Component parent,
            JobModel job,
            LeatherFiles files,
            Supplier<Optional<Pattern>> pattern,
            Supplier<String> patternError,
            PrinterPreferences printer,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        costTasks = new TaskQueue(notifier);
        ShelfModel shelf = new ShelfModel(files.shelf(), notifier);
        PriceListModel prices = new PriceListModel(files.prices(), notifier);
        layout = new LayoutModel(job, shelf, prices, pattern, notifier);
        LeatherActions actions = new LeatherActions(layout, shelf, printer, tasks, dialogs, notifier, savedNotifier);
        StockCards[] cards = new StockCards[1];
        StockEditor editor = new StockEditor(parent, job, files.shelf(), shelf, name -> cards[0].choose(name, true));
        cards[0] = new StockCards(job, shelf, editor);
        form = new LeatherForm(job, layout, shelf, prices, editor, cards[0], actions, costTasks);
        panel = new LeatherPanel(layout, job, patternError);
    }

    public FormPanel form() {
        return form;
    }

    public LeatherPanel panel() {
        return panel;
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
