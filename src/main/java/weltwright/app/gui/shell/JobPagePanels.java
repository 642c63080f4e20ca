package weltwright.app.gui.shell;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import weltwright.app.gui.finding.FindingList;
import weltwright.app.gui.knife.KnifeForm;
import weltwright.app.gui.knife.ThicknessPhotoAction;
import weltwright.app.gui.leather.LeatherStage;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.outline.OutlinePanel;
import weltwright.app.gui.outline.TraceController;
import weltwright.app.gui.paper.CutterPreferences;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.pattern.PatternPanel;
import weltwright.app.gui.sheath.SheathForm;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.error.UserFacingException;
import weltwright.job.MakerDefaults;

/**
 * The panels of a {@link JobPage} that take longest to create. Each is created when the page asks for it, or before,
 * one at a time, so that the window never holds still for all of them together. Used on the event thread.
 */
final class JobPagePanels {
    final FindingList findings = new FindingList();
    final PrinterPreferences printer;
    final CutterPreferences cutter;
    final Part<OutlinePanel> outline;
    final Part<PatternPanel> pattern;
    final Part<LeatherStage> leather;
    final Part<KnifeForm> knifeForm;
    final Part<SheathForm> sheathForm;
    private final List<Part<?>> all;

    JobPagePanels(
            MainWindow window,
            Application application,
            TaskQueue tasks,
            TraceController traces,
            FileDialogs dialogs,
            ToastArea toasts) {
        JobModel model = window.model();
        printer = new PrinterPreferences(application.preferences());
        cutter = new CutterPreferences(application.preferences());
        outline = new Part<>(() -> new OutlinePanel(model, tasks, traces.assessor(), findings));
        pattern = new Part<>(() -> new PatternPanel(model, tasks, window.displayUnit(), dialogs, findings));
        leather = new Part<>(() -> new LeatherStage(
                window.frame(),
                model,
                application.leatherFiles(),
                application.lensStore(),
                pattern.get()::pattern,
                pattern.get()::error,
                printer,
                cutter,
                tasks,
                dialogs,
                toasts::showMessage,
                toasts::showSaved));
        knifeForm = new Part<>(() -> new KnifeForm(
                model,
                application.lensStore(),
                () -> window.page().showPhoto(true),
                new ThicknessPhotoAction(model, tasks, dialogs, toasts::showMessage)));
        sheathForm = new Part<>(() -> new SheathForm(model, () -> defaults(application)));
        all = List.of(outline, pattern, leather, knifeForm, sheathForm);
    }

    private static MakerDefaults defaults(Application application) {
        try {
            return application.makerDefaults().read();
        } catch (UserFacingException e) {
            return MakerDefaults.USUAL; // it is told when a job begins
        }
    }

    /** Creates one of the panels that are still to be created; returns whether there was one. */
    boolean createNext() {
        Optional<Part<?>> next =
                all.stream().filter(part -> part.created.isEmpty()).findFirst();
        next.ifPresent(Part::get);
        return next.isPresent();
    }

    /**
     * A panel that is created when it is first asked for.
     *
     * @param <T> its type
     */
    static final class Part<T> implements Supplier<T> {
        private final Supplier<T> creation;
        private Optional<T> created = Optional.empty();

        private Part(Supplier<T> creation) {
            this.creation = creation;
        }

        @Override
        public T get() {
            T panel = created.orElseGet(creation);
            created = Optional.of(panel);
            return panel;
        }
    }
}
