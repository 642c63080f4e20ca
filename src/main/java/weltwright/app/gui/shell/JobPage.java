package weltwright.app.gui.shell;

import java.util.Arrays;
import java.util.Optional;
import java.util.prefs.Preferences;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JSeparator;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.bench.BenchPanel;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.finding.Finding;
import weltwright.app.gui.knife.KnifeForm;
import weltwright.app.gui.leather.LeatherStage;
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
import weltwright.app.gui.paper.InstalledPrinters;
import weltwright.app.gui.paper.OutputActions;
import weltwright.app.gui.paper.PaperForm;
import weltwright.app.gui.paper.PaperModel;
import weltwright.app.gui.paper.PaperPreview;
import weltwright.app.gui.paper.ScreenPreferences;
import weltwright.app.gui.pattern.PatternPanel;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.LensCalibrationAction;
import weltwright.app.gui.photo.PhotoAssessmentRequest;
import weltwright.app.gui.photo.PhotoPanel;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.units.MeasureUnit;

/**
 * The page of a window's job: title and stages at the top, the form of the selected stage and the next step at the
 * left, the drawing that it changes at the right. Connects the panels of the stages.
 */
final class JobPage extends JPanel {
    private static final Messages TEXTS = Messages.of(JobPage.class);

    private final MainWindow window;
    private final Application application;
    private final JFrame frame;
    private final JobModel model;
    private final transient TaskQueue tasks;
    private final transient JobFileActions jobFiles;
    private final transient TraceController traceController;
    private final OutlinePanel outlinePanel;
    private final PhotoPanel photoPanel;
    private final PatternPanel patternPanel;
    private final transient LeatherStage leather;
    private final transient OutputActions outputActions;
    private final transient LensCalibrationAction lensCalibration;
    private final transient ApplicationActions actions;
    private final KnifeForm knifeForm;
    private final BenchPanel benchPanel;
    private final transient PaperModel paper;
    private final NextStepBar nextStepBar = new NextStepBar(this::perform);
    private final StageBar stageBar = new StageBar(this::goTo);
    private final JobHeader header;
    private final OrderPopup orderPopup;
    private final StageForms forms = new StageForms(this::update);
    private final DrawingCards drawings;
    private final FormBesideDrawing body;
    private WorkflowStage stage = WorkflowStage.KNIFE;
    private transient Object openedJob;
    private transient Optional<Photo> displayedPhoto = Optional.empty();
    private boolean photoRequested;

    /**
     * @param panels created before, or now
     * @param openedBefore the job that the window began with, as {@link JobModel#openedJob} tells it
     */
    JobPage(
            MainWindow window,
            Application application,
            ApplicationActions actions,
            JobPagePanels panels,
            Object openedBefore,
            TaskQueue tasks,
            FileDialogs dialogs,
            JobFileActions jobFiles,
            TraceController traceController,
            ToastArea toasts) {
        super(new MigLayout("insets 0, fill, gap 0"));
        this.window = window;
        this.application = application;
        this.tasks = tasks;
        this.jobFiles = jobFiles;
        this.traceController = traceController;
        frame = window.frame();
        model = window.model();
        this.actions = actions;
        openedJob = openedBefore;
        Preferences preferences = application.preferences();
        outlinePanel = panels.outline.get();
        photoPanel = new PhotoPanel(model, () -> showPhoto(false), panels.findings);
        patternPanel = panels.pattern.get();
        paper = new PaperModel(model, patternPanel::pattern, panels.printer, InstalledPrinters::find, tasks);
        benchPanel = new BenchPanel(model, patternPanel::pattern, tasks);
        outputActions = new OutputActions(
                model,
                patternPanel::pattern,
                paper,
                panels.printer,
                panels.cutter,
                tasks,
                dialogs,
                toasts::showMessage,
                toasts::showSaved);
        leather = panels.leather.get();
        lensCalibration =
                new LensCalibrationAction(model, tasks, dialogs, application.lensStore(), toasts::showMessage);
        orderPopup = new OrderPopup(frame, model, new OrderForm(model));
        header = new JobHeader(model, actions.home, actions.order, actions.topLineActions());
        knifeForm = panels.knifeForm.get();
        knifeForm.onThicknessEntered(() -> {
            if (nextStepBar.proposes(NextStepPrompt.NextAction.FIND_OUTLINE)) {
                perform(NextStepPrompt.NextAction.FIND_OUTLINE);
            }
        });
        outlinePanel.canvas().widthProbe().onMeasure(knifeForm::editWidthAt);
        forms.add(WorkflowStage.KNIFE, knifeForm);
        forms.add(WorkflowStage.SHEATH, panels.sheathForm.get());
        forms.add(WorkflowStage.LEATHER, leather.form());
        CutterForm cutterForm = new CutterForm(panels.cutter, actions.saveSvg, actions.saveDxf);
        forms.add(
                WorkflowStage.PAPER,
                new PaperForm(paper, actions.savePdf, actions.printChosenPages, actions.print, cutterForm));
        forms.add(WorkflowStage.BENCH, benchPanel.createForm(dialogs));
        orderPopup.form().onRefusal(this::update);
        panels.findings.onShow(this::showDrawing);
        drawings = new DrawingCards(
                photoPanel,
                outlinePanel,
                patternPanel,
                leather.panel(),
                new PaperPreview(paper, new ScreenPreferences(preferences), tasks),
                benchPanel);
        body = new FormBesideDrawing(forms, nextStepBar, drawings);
        layOut();
    }

    /** Connects the page to the job and shows it; called once, when the window holds the page. */
    void begin() {
        new DerivedValue<>(
                model,
                tasks,
                TEXTS.text("job-page.opening-the-photo"),
                Job::photo,
                BackgroundImage::asTaken,
                state -> photoPanel.canvas().setBackgroundImage(state.value()));
        new DerivedValue<>(
                model,
                tasks,
                TEXTS.text("job-page.turning-the-photo-to-be"),
                RectificationRequest::of,
                RectificationRequest::image,
                state -> outlinePanel.canvas().setBackgroundImage(state.value()));
        new DerivedValue<>(
                model,
                tasks,
                TEXTS.text("job-page.looking-at-the-photo"),
                PhotoAssessmentRequest::of,
                traceController.assessor()::assess,
                this::setAssessment);
        model.subscribe(this::update);
        tasks.addListener(this::update);
        patternPanel.addListener(this::update);
        patternPanel.addListener(paper::update);
        patternPanel.addListener(benchPanel::patternChanged);
        patternPanel.addListener(leather::patternChanged);
        leather.addProgressListener(this::update);
        DisplayUnit displayUnit = window.displayUnit();
        displayUnit.addListener(() -> setUnit(displayUnit.unit()));
        setUnit(displayUnit.unit());
        select(WorkflowStage.KNIFE);
    }

    OutputActions output() {
        return outputActions;
    }

    LensCalibrationAction lensCalibration() {
        return lensCalibration;
    }

    /** Returns the button of the next step. */
    JButton proposedButton() {
        return nextStepBar.proposedButton();
    }

    /** Opens the guide at the page about what is visible. */
    void showHelp() {
        drawings.showHelp(frame);
    }

    /** Takes paper and printer anew from the preferences. */
    void readPrinterPreferences() {
        paper.readPreferences();
    }

    /** Ends what works in the background. */
    void close() {
        leather.close();
    }

    void closeOrder() {
        orderPopup.close();
    }

    /** Returns the pattern of the present job; empty while it is being computed and where there is none. */
    public Optional<Pattern> pattern() {
        return patternPanel.pattern();
    }

    /** Remembers the file of the job and the stage at which it is. */
    void rememberPlace() {
        model.file().ifPresent(file -> application.recentJobs().put(file, stage.name()));
    }

    /**
     * Calls {@code output}, which makes something of the pattern, with what is being typed committed; where an entry is
     * refused on which the pattern depends, shows that entry instead.
     */
    void whereNoEntryIsRefused(Runnable output) {
        window.commitFocusedField();
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

    /** Opens or closes customer, knife, dates and notes. */
    void toggleOrder() {
        orderPopup.toggle(header);
    }

    /** Shows a stage, from the start page too. */
    void goTo(WorkflowStage newStage) {
        window.showJob();
        body.setFormOpen(true);
        select(newStage);
    }

    private void select(WorkflowStage newStage) {
        stage = newStage;
        rememberPlace();
        stageBar.select(newStage);
        forms.show(newStage);
        update();
    }

    private void update() {
        Job job = model.job();
        if (!model.openedJob().equals(openedJob)) {
            openedJob = model.openedJob();
            goTo(leftAt());
            forms.discardUncommitted();
            orderPopup.form().discardUncommitted();
        }
        outlinePanel.canvas().withhold(forms.refusalText(WorkflowStage.KNIFE));
        patternPanel.withhold(forms.refusalText(WorkflowStage.SHEATH));
        photoPanel.showFailure(traceController.error(), traceController.rejectedOutline());
        nextStepBar.show(NextStepPrompt.of(job, stage, circumstances(stage)));
        StageProgress.Results results = new StageProgress.Results(
                patternPanel.pattern().isEmpty(), leather.progress(), outputActions.isOnPaper());
        stageBar.show(each -> StageProgress.of(job, each, circumstances(each), results));
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
                traceController.isRunning(),
                forms.refusalText(of),
                traceController.error(),
                !traceController.rejectedOutline().isEmpty(),
                patternPanel.error());
    }

    /** Switches between the photo as taken and the outline. */
    void showPhoto(boolean requested) {
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
            case MARK_ON_PHOTO -> {
                goTo(WorkflowStage.KNIFE);
                photoPanel.markNotKnife();
            }
            case SET_CORNERS -> {
                goTo(WorkflowStage.KNIFE);
                knifeForm.setCorners();
            }
        }
    }

    /** Returns the stage at which the present job was left when it was open last. */
    private WorkflowStage leftAt() {
        return model.file()
                .flatMap(application.recentJobs()::stage)
                .flatMap(name -> Arrays.stream(WorkflowStage.values())
                        .filter(each -> each.name().equals(name))
                        .findFirst())
                .orElse(WorkflowStage.KNIFE);
    }

    private void layOut() {
        JPanel top = new JPanel(new MigLayout("insets 0, fillx, wrap 1, gap 0", "[grow,fill]"));
        top.add(header, "wmin 0");
        top.add(stageBar, "wmin 0");
        top.add(new JSeparator(), "h 1!");
        add(top, "dock north");
        add(body, "push, grow, wmin 0, hmin 0");
    }
}
