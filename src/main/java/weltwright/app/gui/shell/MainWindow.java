package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Desktop;
import java.awt.Dimension;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.prefs.Preferences;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JRootPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.bench.BenchPanel;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.finding.Finding;
import weltwright.app.gui.finding.FindingList;
import weltwright.app.gui.knife.KnifeForm;
import weltwright.app.gui.knife.ThicknessPhotoAction;
import weltwright.app.gui.leather.LeatherStage;
import weltwright.app.gui.model.Autosave;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.order.OrderForm;
import weltwright.app.gui.outline.OutlinePanel;
import weltwright.app.gui.outline.RectificationRequest;
import weltwright.app.gui.outline.TraceController;
import weltwright.app.gui.paper.CutterForm;
import weltwright.app.gui.paper.CutterPreferences;
import weltwright.app.gui.paper.InstalledPrinters;
import weltwright.app.gui.paper.OutputActions;
import weltwright.app.gui.paper.PaperForm;
import weltwright.app.gui.paper.PaperModel;
import weltwright.app.gui.paper.PaperPreview;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.paper.ScreenPreferences;
import weltwright.app.gui.pattern.PatternPanel;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.LensCalibrationAction;
import weltwright.app.gui.photo.PhotoAssessmentRequest;
import weltwright.app.gui.photo.PhotoPanel;
import weltwright.app.gui.sheath.SheathForm;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.image.Photo;
import weltwright.job.AbandonedJob;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.units.MeasureUnit;

/**
 * The window of a job: title and stages at the top, the form of the selected stage and the next step at the left, the
 * drawing that it changes at the right. Creates all panels and actions of a window and connects them.
 */
public final class MainWindow {
    private final Application application;
    private final JFrame frame = new JFrame("Weltwright");
    private final JobModel model = new JobModel(Job.begin(LocalDate.now(ZoneId.systemDefault())));
    private final JPanel body = new JPanel(new MigLayout("insets 0, fill", "[grow,fill]", "[grow,fill]"));
    private final ToastArea toasts = new ToastArea(body);
    private final TaskQueue tasks = new TaskQueue(toasts::showError);
    private final Autosave autosave;
    private final TraceController traceController = new TraceController(model, tasks);
    private final JobFileActions jobFiles;
    private final FindingList findings = new FindingList();
    private final OutlinePanel outlinePanel = new OutlinePanel(model, tasks, findings);
    private final PhotoPanel photoPanel = new PhotoPanel(model, () -> showPhoto(false), findings);
    private final PatternPanel patternPanel;
    private final LeatherStage leather;
    private final OutputActions outputActions;
    private final ApplicationActions actions;
    private final KnifeForm knifeForm;
    private final NextStepBar nextStepBar = new NextStepBar(this::perform);
    private final StageBar stageBar = new StageBar(this::goTo);
    private final JobHeader header;
    private final OrderPopup orderPopup;
    private final StageForms forms = new StageForms(this::update);
    private final DrawingCards drawings;
    private WorkflowStage stage = WorkflowStage.KNIFE;
    private Object openedJob = model.openedJob();
    private Optional<Photo> displayedPhoto = Optional.empty();
    private boolean photoRequested;
    private boolean built;

    /** Creates a window with an empty job. */
    MainWindow(Application application) {
        this.application = application;
        Preferences preferences = application.preferences();
        PhoneLensStore lensStore = application.lensStore();
        DisplayUnit displayUnit = application.displayUnit();
        FileDialogs dialogs = new FileDialogs(frame, preferences);
        PrinterPreferences printer = new PrinterPreferences(preferences);
        CutterPreferences cutter = new CutterPreferences(preferences);
        autosave = new Autosave(model, application.openJobs().begin(), toasts::showError);
        jobFiles = new JobFileActions(
                model, tasks, frame, dialogs, lensStore, traceController::forgetCorrections, toasts::showMessage);
        patternPanel = new PatternPanel(model, tasks, displayUnit, dialogs, findings);
        PaperModel paper = new PaperModel(model, patternPanel::pattern, printer, InstalledPrinters::find, tasks);
        BenchPanel benchPanel = new BenchPanel(model, patternPanel::pattern, tasks);
        outputActions = new OutputActions(
                model,
                patternPanel::pattern,
                paper,
                printer,
                cutter,
                tasks,
                dialogs,
                toasts::showMessage,
                toasts::showSaved);
        leather = new LeatherStage(
                frame,
                model,
                application.leatherFiles(),
                patternPanel::pattern,
                patternPanel::error,
                printer,
                tasks,
                dialogs,
                toasts::showMessage,
                toasts::showSaved);
        FileOpener opener = application.fileOpener();
        if (opener.isAvailable()) {
            toasts.onOpen(file -> open(() -> opener.open(file)), file -> open(() -> opener.showInFolder(file)));
        }
        LensCalibrationAction lensCalibration =
                new LensCalibrationAction(model, tasks, dialogs, lensStore, toasts::showMessage);
        actions =
                new ApplicationActions(this, jobFiles, lensCalibration, outputActions, model, displayUnit, preferences);
        orderPopup = new OrderPopup(frame, new OrderForm(model));
        header = new JobHeader(model, actions.home, actions.order, actions.toolBarActions());
        ThicknessPhotoAction thicknessPhoto = new ThicknessPhotoAction(model, tasks, dialogs, toasts::showMessage);
        knifeForm = new KnifeForm(model, lensStore, () -> showPhoto(true), thicknessPhoto);
        outlinePanel.canvas().widthProbe().onMeasure(knifeForm::editWidthAt);
        forms.add(WorkflowStage.KNIFE, knifeForm);
        forms.add(WorkflowStage.SHEATH, new SheathForm(model));
        forms.add(WorkflowStage.LEATHER, leather.form());
        CutterForm cutterForm = new CutterForm(cutter, actions.saveSvg, actions.saveDxf);
        forms.add(
                WorkflowStage.PAPER,
                new PaperForm(paper, actions.savePdf, actions.printChosenPages, actions.print, cutterForm));
        forms.add(WorkflowStage.BENCH, benchPanel.createForm(dialogs));
        orderPopup.form().onRefusal(this::update);
        drawings = new DrawingCards(
                new WelcomePanel(actions.saveSheet, actions.printSheet, actions.openPhoto, actions.openJob),
                photoPanel,
                outlinePanel,
                patternPanel,
                leather.panel(),
                new PaperPreview(paper, new ScreenPreferences(preferences), tasks),
                benchPanel);
        frame.setJMenuBar(actions.menuBar());
        frame.setContentPane(
                WindowContent.of(header, stageBar, forms, nextStepBar, drawings, body, new TaskProgressBar(tasks)));
        toasts.install(frame.getLayeredPane());
        JRootPane root = frame.getRootPane();
        root.setDefaultButton(nextStepBar.proposedButton());
        root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke("ctrl ENTER"), "onward");
        root.getActionMap().put("onward", new RunnableAction("Onward", "", nextStepBar.proposedButton()::doClick));
        WindowDrop.install(frame, new FileDropHandler(this::openFile, toasts::showMessage));
        frame.setIconImages(ToolIcons.windowIcons());
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }
        });
        new DerivedValue<>(
                model,
                tasks,
                "Opening the photo",
                Job::photo,
                BackgroundImage::asTaken,
                state -> photoPanel.canvas().setBackgroundImage(state.value()));
        new DerivedValue<>(
                model,
                tasks,
                "Turning the photo to be seen from above",
                RectificationRequest::of,
                RectificationRequest::image,
                state -> outlinePanel.canvas().setBackgroundImage(state.value()));
        new DerivedValue<>(
                model,
                tasks,
                "Looking at the photo",
                PhotoAssessmentRequest::of,
                PhotoAssessmentRequest::assess,
                this::setAssessment);
        built = true;
        model.subscribe(this::update);
        tasks.addListener(this::update);
        patternPanel.addListener(this::update);
        patternPanel.addListener(paper::update);
        patternPanel.addListener(leather::patternChanged);
        patternPanel.addListener(benchPanel::patternChanged);
        displayUnit.addListener(() -> setUnit(displayUnit.unit()));
        findings.onShow(this::showDrawing);
        setUnit(displayUnit.unit());
        goTo(WorkflowStage.KNIFE);
    }

    public void show() {
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> {
            String message = TaskQueue.defectMessage("showing the window", e);
            SwingUtilities.invokeLater(() -> toasts.showError(message));
        });
        if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.APP_QUIT_HANDLER)) {
            Desktop.getDesktop().setQuitHandler((quit, answer) -> {
                answer.cancelQuit(); // quit() may ask the user, and ends the program itself
                application.quit();
            });
        }
        Dimension screen = frame.getToolkit().getScreenSize();
        frame.setSize(Math.min(UIScale.scale(1360), screen.width), Math.min(UIScale.scale(860), screen.height - 40));
        frame.setMinimumSize(UIScale.scale(new Dimension(1000, 600)));
        frame.setLocationRelativeTo(null);
        frame.setVisible(true);
    }

    public JFrame frame() {
        return frame;
    }

    public JobModel model() {
        return model;
    }

    /** Returns the pattern of the present job; empty while it is being computed and where there is none. */
    public Optional<Pattern> pattern() {
        return patternPanel.pattern();
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
                    update();
                }));
    }

    /** Closes the window, which ends the program if it is the last, unless the user cancels to keep an unsaved job. */
    void close() {
        commitFocusedField();
        jobFiles.confirmLeaving(() -> {
            tasks.close();
            leather.close();
            autosave.close();
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

    /**
     * Calls {@code output}, which makes something of the pattern, with what is being typed committed; where an entry is
     * refused on which the pattern depends, shows that entry instead.
     */
    void whereNoEntryIsRefused(Runnable output) {
        commitFocusedField();
        if (!patternPanel.commitEntry()) {
            return;
        }
        if (orderPopup.form().refusedField().isPresent()) {
            orderPopup.showRefusedEntry(header);
            return;
        }
        forms.refusal(WorkflowStage.PAPER).ifPresentOrElse(this::showRefusedEntry, output);
    }

    private void showRefusedEntry(WorkflowStage refused) {
        goTo(refused);
        forms.focusRefusedEntry(refused);
    }

    private void setUnit(MeasureUnit unit) {
        forms.setUnit(unit);
        model.setUnit(unit);
    }

    /** Returns the visible canvas. */
    DrawingCanvas activeCanvas() {
        return drawings.activeCanvas();
    }

    /** Opens the guide at the page about what is visible. */
    void showHelp() {
        drawings.showHelp(frame);
    }

    /** Opens or closes customer, knife, dates and notes. */
    void toggleOrder() {
        orderPopup.toggle(header);
    }

    void goTo(WorkflowStage newStage) {
        stage = newStage;
        stageBar.select(newStage);
        forms.show(newStage);
        update();
    }

    private void update() {
        if (!built) {
            return;
        }
        Job job = model.job();
        if (!model.openedJob().equals(openedJob)) {
            openedJob = model.openedJob();
            forms.discardUncommitted();
            orderPopup.form().discardUncommitted();
        }
        outlinePanel.canvas().withhold(forms.refusalText(WorkflowStage.KNIFE));
        patternPanel.withhold(forms.refusalText(WorkflowStage.SHEATH));
        photoPanel.leaveOut(traceController.error());
        nextStepBar.show(NextStepPrompt.of(job, stage, circumstances(stage)));
        boolean computing = patternPanel.pattern().isEmpty();
        stageBar.show(each -> StageProgress.of(job, each, circumstances(each), computing));
        actions.setPatternAvailable(patternPanel.pattern().isPresent()
                || forms.refusal(WorkflowStage.PAPER).isPresent());
        drawings.show(stage, job, photoRequested);
        String owner = Stream.of(job.knifeName(), job.customer())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        frame.setTitle((model.hasUnsavedChanges() ? "* " : "") + (owner.isEmpty() ? "" : owner + " – ") + "Weltwright");
        if (!displayedPhoto.equals(job.photo())) {
            displayedPhoto = job.photo();
            photoRequested = false;
            if (job.silhouette().isEmpty() && job.photo().isPresent()) {
                goTo(WorkflowStage.KNIFE);
                knifeForm.focusThicknesses();
            }
        }
    }

    private NextStepPrompt.Circumstances circumstances(WorkflowStage of) {
        return new NextStepPrompt.Circumstances(
                traceController.isRunning(), forms.refusalText(of), traceController.error(), patternPanel.error());
    }

    private void open(Runnable opening) {
        tasks.submit("Opening the file", Executors.callable(opening), done -> {});
    }

    /** Switches between the photo as taken and the outline. */
    private void showPhoto(boolean requested) {
        photoRequested = requested;
        goTo(WorkflowStage.KNIFE);
        if (requested) {
            photoPanel.canvas().requestFocusInWindow();
        }
    }

    /** Makes the drawing visible on which something was found. */
    private void showDrawing(Finding.Place place) {
        switch (place) {
            case PHOTO -> showPhoto(true);
            case OUTLINE -> showPhoto(false);
            case SHEATH -> {
                if (!patternPanel.isShowing()) {
                    goTo(WorkflowStage.SHEATH);
                }
            }
        }
    }

    private void setAssessment(DerivedValue.State<PhotoAssessment> state) {
        photoPanel.setAssessment(state);
        Optional<PhotoAssessment> assessment = state.computing() ? Optional.empty() : state.value();
        outlinePanel.canvas().groundLayer().setGround(assessment.flatMap(PhotoAssessment::ground));
        outlinePanel.canvas().groundChanged();
        if (assessment.map(PhotoAssessment::pitchAsked).orElse(false)) {
            knifeForm.requirePitch();
        }
    }

    private void perform(NextStepPrompt.NextAction action) {
        switch (action) {
            case OPEN_PHOTO, OPEN_ANOTHER_PHOTO -> jobFiles.choosePhoto();
            case FIND_OUTLINE -> {
                photoRequested = false;
                traceController.trace();
            }
            case GO_TO_KNIFE -> goTo(WorkflowStage.KNIFE);
            case GO_TO_SHEATH -> goTo(WorkflowStage.SHEATH);
            case GO_TO_LEATHER -> goTo(WorkflowStage.LEATHER);
            case GO_TO_PAPER -> goTo(WorkflowStage.PAPER);
            case SAVE_PDF -> whereNoEntryIsRefused(outputActions::savePdf);
            case TYPE_THICKNESSES -> {
                goTo(WorkflowStage.KNIFE);
                knifeForm.focusThicknesses();
            }
            case MEND_ENTRY -> forms.refusal(stage).ifPresent(this::showRefusedEntry);
            case CHOOSE_GROUND -> {
                goTo(WorkflowStage.KNIFE);
                knifeForm.focusGround();
            }
            case SET_CORNERS -> {
                goTo(WorkflowStage.KNIFE);
                knifeForm.setCorners();
            }
        }
    }
}
