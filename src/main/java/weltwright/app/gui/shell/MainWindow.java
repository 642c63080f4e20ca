package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BorderLayout;
import java.awt.Desktop;
import java.awt.Dimension;
import java.awt.Frame;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.prefs.Preferences;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JRootPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.home.HomePage;
import weltwright.app.gui.home.Sample;
import weltwright.app.gui.model.Autosave;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.outline.TraceController;
import weltwright.app.gui.paper.InstalledPrinters;
import weltwright.app.gui.preferences.PreferencesDialog;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.FileDropHandler;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.error.UserFacingException;
import weltwright.job.AbandonedJob;
import weltwright.job.Job;
import weltwright.job.MakerDefaults;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.pattern.Pattern;

/** A window with the start page and the page of one job; opens, closes and recovers that job. */
public final class MainWindow {
    private static final Messages TEXTS = Messages.of(MainWindow.class);

    private final DisplayUnit displayUnit;
    private final Application application;
    private final JFrame frame = new JFrame("Weltwright");
    private final JobModel model;
    private final JPanel pageArea = new JPanel(new BorderLayout());
    private final ToastArea toasts = new ToastArea(pageArea);
    private final Set<String> reportedDefects = ConcurrentHashMap.newKeySet();
    private final TaskQueue tasks = new TaskQueue(toasts::showError);
    private final Autosave autosave;
    private final JobFileActions jobFiles;
    private final FileDialogs dialogs;
    private final TraceController traceController;
    private final ApplicationActions actions;
    private final WindowPages pages;
    private final Object firstJob;
    private final JobPagePanels panels;
    private Optional<JobPage> page = Optional.empty();

    /** Creates a window with an empty job. */
    MainWindow(Application application) {
        this.application = application;
        displayUnit = application.displayUnit().forWindow();
        model = new JobModel(newJob(HardwareList.USUAL));
        firstJob = model.openedJob();
        traceController = new TraceController(model, tasks);
        Preferences preferences = application.preferences();
        PhoneLensStore lensStore = application.lensStore();
        dialogs = new FileDialogs(frame, preferences);
        autosave = new Autosave(model, application.openJobs().begin(), toasts::showError);
        jobFiles = new JobFileActions(
                application,
                this,
                model,
                tasks,
                frame,
                dialogs,
                lensStore,
                traceController::forgetCorrections,
                toasts::showMessage);
        FileOpener opener = application.fileOpener();
        if (opener.isAvailable()) {
            toasts.onOpen(file -> open(() -> opener.open(file)), file -> open(() -> opener.showInFolder(file)));
        }
        actions = new ApplicationActions(this, this::page, jobFiles, model, displayUnit, application.preferences());
        HomePage home = new HomePage(
                List.of(actions.newFromPhoto, actions.fromPhone),
                List.of(actions.openJob, actions.printSheet, actions.saveSheet, actions.preferences),
                this::openSample,
                jobFiles::open);
        pages = new WindowPages(home);
        panels = new JobPagePanels(this, application, tasks, traceController, dialogs, toasts);
        frame.setJMenuBar(actions.menuBar());
        frame.setContentPane(contentPane());
        toasts.install(frame.getLayeredPane());
        JRootPane root = frame.getRootPane();
        root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke("ctrl ENTER"), "onward");
        root.getActionMap()
                .put(
                        "onward",
                        new RunnableAction(
                                "Onward",
                                "",
                                () -> page.ifPresent(
                                        shown -> shown.proposedButton().doClick())));
        WindowDrop.install(frame, new FileDropHandler(this::openFile, toasts::showMessage));
        frame.setIconImages(ToolIcons.windowIcons());
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }
        });
        model.subscribe(this::createPageForJob);
    }

    /** Creates the page of the job as soon as there is one that it shows: the start page is there sooner without it. */
    private void createPageForJob() {
        if (page.isEmpty() && !(isEmpty() && model.openedJob().equals(firstJob))) {
            page();
        }
    }

    /** Shows the window in the middle of the screen. */
    public void show() {
        prepareToShow();
        frame.setLocationRelativeTo(null);
        frame.setVisible(true);
    }

    /** Shows the window a little lower and to the right of another one, or in the screen's corner if it has no room. */
    void showBeside(JFrame other) {
        prepareToShow();
        Rectangle screen = other.getGraphicsConfiguration().getBounds();
        frame.setLocation(other.getX() + UIScale.scale(32), other.getY() + UIScale.scale(32));
        if (!screen.contains(frame.getBounds())) {
            frame.setLocation(screen.getLocation());
        }
        frame.setVisible(true);
    }

    private void prepareToShow() {
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> report(e));
        if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.APP_QUIT_HANDLER)) {
            Desktop.getDesktop().setQuitHandler((quit, answer) -> {
                answer.cancelQuit(); // quit() may ask the user, and ends the program itself
                application.quit();
            });
        }
        if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.APP_PREFERENCES)) {
            Desktop.getDesktop().setPreferencesHandler(e -> showPreferences());
        }
        if (isEmpty()) {
            showHome();
        }
        Dimension screen = frame.getToolkit().getScreenSize();
        frame.setSize(onScreen(screen, 1360, 860));
        frame.setMinimumSize(onScreen(screen, 1000, 600));
    }

    /** Returns a size, given in px at 96 dpi, or as much of it as the screen has beside a bar of the system. */
    private static Dimension onScreen(Dimension screen, int width, int height) {
        return new Dimension(
                Math.min(UIScale.scale(width), screen.width), Math.min(UIScale.scale(height), screen.height - 40));
    }

    /** Logs a defect and tells of it, once: one in painting happens again with each repaint that telling brings. */
    private void report(Throwable defect) {
        String place = Arrays.stream(defect.getStackTrace()).limit(1).toList()
                + defect.getClass().getName();
        if (reportedDefects.add(place)) {
            String message = TaskQueue.defectMessage(TEXTS.text("main-window.showing"), defect);
            SwingUtilities.invokeLater(() -> toasts.showError(message));
        }
    }

    /** Brings the window before all others. */
    void toFront() {
        showJob();
        frame.setState(Frame.NORMAL);
        frame.toFront();
    }

    /** Returns the unit of this window. */
    DisplayUnit displayUnit() {
        return displayUnit;
    }

    public JFrame frame() {
        return frame;
    }

    public JobModel model() {
        return model;
    }

    /** Returns the pattern of the present job; empty while it is being computed and where there is none. */
    public Optional<Pattern> pattern() {
        return page.flatMap(JobPage::pattern);
    }

    /** Remembers the file of the job and the stage at which it is. */
    void rememberPlace() {
        page.ifPresent(JobPage::rememberPlace);
    }

    /** Returns the page of the job, which is created where it is asked for, and not shown by that. */
    JobPage page() {
        if (page.isEmpty()) {
            JobPage created = new JobPage(
                    this, application, actions, panels, firstJob, tasks, dialogs, jobFiles, traceController, toasts);
            page = Optional.of(created);
            pages.addJob(created);
            WindowDrop.leaveDropsToWindow(created);
            created.begin();
        }
        return page.get();
    }

    /** Creates the page of the job, which is not shown by that, in pieces, between which the window takes input. */
    void preparePage() {
        if (page.isEmpty() && frame.isDisplayable()) {
            if (panels.createNext()) {
                SwingUtilities.invokeLater(this::preparePage);
            } else {
                page();
            }
        }
    }

    /** Shows the page of the job. */
    void showJob() {
        frame.getRootPane().setDefaultButton(page().proposedButton());
        pages.showJob();
    }

    /** Returns whether there is nothing in this window that another job would replace. */
    boolean isEmpty() {
        Job job = model.job();
        return model.file().isEmpty()
                && !model.hasUnsavedChanges()
                && job.photo().isEmpty()
                && job.silhouette().isEmpty();
    }

    /** Shows what went wrong, with a way out. */
    void offer(String message, String way, Runnable action) {
        RunnableAction wayOut = new RunnableAction(way, "", action);
        wayOut.putValue(Action.ACTION_COMMAND_KEY, "way out");
        toasts.ask(message, List.of(wayOut));
    }

    /**
     * An empty job with the maker's defaults; with the usual values where they cannot be read, which is then told.
     *
     * @param before hardware for the job where the defaults have none
     */
    Job newJob(HardwareList before) {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        try {
            return application.makerDefaults().read().begin(today, before);
        } catch (UserFacingException e) {
            SwingUtilities.invokeLater(() -> toasts.showError(e.getMessage())); // once the window is built
            return MakerDefaults.USUAL.begin(today, before);
        }
    }

    /** Shows the preferences; afterwards every empty job begins with the maker's defaults as they then are. */
    void showPreferences() {
        commitFocusedField();
        PreferencesDialog.show(
                frame,
                application.preferences(),
                displayUnit,
                application.makerDefaults(),
                () -> application.windows().forEach(open -> open.page.ifPresent(JobPage::readPrinterPreferences)),
                receiver -> runInBackground(
                        TEXTS.text("main-window.looking-for-printers"), InstalledPrinters::find, receiver));
        application.windows().forEach(MainWindow::beginAnewIfEmpty);
    }

    private void beginAnewIfEmpty() {
        if (!isEmpty()) {
            return;
        }
        Job begun = newJob(model.job().spec().hardware());
        if (!begun.equals(model.job())) {
            boolean home = isHomeShown();
            model.open(begun, Optional.empty());
            if (home) {
                pages.showHome();
            }
        }
    }

    boolean isHomeShown() {
        return pages.isHomeShown();
    }

    /** Shows the start page. */
    void showHome() {
        page.ifPresent(JobPage::closeOrder);
        pages.showHome();
        runInBackground(TEXTS.text("main-window.looking-for-jobs"), application::shelf, pages::setJobs);
    }

    private void openSample(Sample sample) {
        runInBackground(
                TEXTS.text("main-window.opening-the-sample"),
                () -> sample.job(LocalDate.now(ZoneId.systemDefault())),
                job -> jobFiles.show(job, Optional.empty()));
    }

    /** Opens a job or a photo. */
    void openFile(Path file) {
        jobFiles.open(file);
    }

    /** Runs a task of the window in the background. */
    <T> void runInBackground(String title, Callable<T> task, Consumer<T> onSuccess) {
        tasks.submit(title, task, onSuccess);
    }

    /** Asks whether work that was not saved is to be restored, in this window. */
    void offerRecovery(AbandonedJob abandoned) {
        new RecoveryOffer(abandoned, tasks, toasts)
                .show((job, entry) -> jobFiles.confirmLeaving(() -> {
                    autosave.restore(job, abandoned.version(), entry);
                }));
    }

    /** Opens the guide at the page about what is visible. */
    void showHelp() {
        page().showHelp();
    }

    /** Closes the window, which ends the program if it is the last, unless the user cancels to keep an unsaved job. */
    public void close() {
        commitFocusedField();
        jobFiles.confirmLeaving(() -> {
            tasks.close();
            page.ifPresent(JobPage::close);
            autosave.close();
            displayUnit.close();
            frame.dispose();
            application.closed(this);
        });
    }

    /** Commits the text of the focused field, so that the job contains it before it is saved or closed. */
    void commitFocusedField() {
        if (frame.getFocusOwner() instanceof JTextField line) {
            line.postActionEvent();
        }
    }

    private void open(Runnable opening) {
        tasks.submit(TEXTS.text("main-window.opening-the-file"), Executors.callable(opening), done -> {});
    }

    private JPanel contentPane() {
        JPanel content = new JPanel(new MigLayout("insets 0, fill, gap 0"));
        JPanel statusBar = new JPanel(new MigLayout("insets 0 12 0 12", "[grow,fill]", "[28!]"));
        statusBar.add(new TaskProgressBar(tasks), "hmax 26, wmin 0");
        content.add(statusBar, "dock south");
        pageArea.add(pages, BorderLayout.CENTER);
        content.add(pageArea, "push, grow, wmin 0, hmin 0");
        return content;
    }
}
