package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.CardLayout;
import java.awt.Desktop;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.prefs.Preferences;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JRootPane;
import javax.swing.JSplitPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.knife.KnifeForm;
import weltwright.app.gui.knife.ThicknessPhotoAction;
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
import weltwright.app.gui.theme.Theme;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.units.MeasureUnit;

/**
 * The main window: the stages of a job and the next step at the top, the form of the selected stage at the left, and
 * the drawing that it changes at the right. Creates all panels and actions and connects them.
 */
public final class MainWindow {
    private static final String WELCOME = "start";
    private static final String PHOTO = "photo";
    private static final String OUTLINE = "outline";
    private static final String PATTERN = "pattern";
    private static final String PAPER = "paper";

    /** Node of the user's preferences; independent of the package, so that stored preferences remain valid. */
    private static final String PREFERENCES = "weltwright/window";

    private final JFrame frame = new JFrame("Weltwright");
    private final NotificationBar notificationBar = new NotificationBar();
    private final JobModel model = new JobModel(Job.begin(LocalDate.now(ZoneId.systemDefault())));
    private final TaskQueue tasks = new TaskQueue(notificationBar::showMessage);
    private final TraceController traceController = new TraceController(model, tasks);
    private final JobFileActions jobFiles;
    private final OutlinePanel outlinePanel = new OutlinePanel(model, tasks);
    private final PhotoPanel photoPanel = new PhotoPanel(model, () -> showPhoto(false));
    private final PatternPanel patternPanel;
    private final OutputActions outputActions;
    private final PaperModel paper;
    private final PaperPreview paperPreview;
    private final ApplicationActions actions;
    private final KnifeForm knifeForm;
    private final NextStepBar nextStepBar = new NextStepBar(this::perform);
    private final JLabel fileLabel = new JLabel();
    private final StageForms forms = new StageForms(this::update);
    private final JPanel drawings = new JPanel(new CardLayout());
    private final Map<WorkflowStage, JToggleButton> stageButtons = new EnumMap<>(WorkflowStage.class);
    private WorkflowStage stage = WorkflowStage.KNIFE;
    private Object openedJob = model.openedJob();
    private Optional<Photo> displayedPhoto = Optional.empty();
    private boolean photoRequested;

    /**
     * @param preferences of the user: theme, unit, printer, folder
     * @param lensStore calibrated lenses
     * @param fileOpener opens what was saved
     */
    public MainWindow(Preferences preferences, PhoneLensStore lensStore, FileOpener fileOpener) {
        FileDialogs dialogs = new FileDialogs(frame, preferences);
        PrinterPreferences printer = new PrinterPreferences(preferences);
        CutterPreferences cutter = new CutterPreferences(preferences);
        jobFiles = new JobFileActions(
                model,
                tasks,
                frame,
                dialogs,
                lensStore,
                traceController::forgetCorrections,
                notificationBar::showMessage);
        DisplayUnit displayUnit = new DisplayUnit(preferences);
        patternPanel = new PatternPanel(model, tasks, displayUnit, dialogs);
        paper = new PaperModel(model, patternPanel::pattern, printer, InstalledPrinters::find, tasks);
        paperPreview = new PaperPreview(paper, new ScreenPreferences(preferences), tasks);
        outputActions = new OutputActions(
                model,
                patternPanel::pattern,
                paper,
                printer,
                cutter,
                tasks,
                dialogs,
                notificationBar::showMessage,
                fileOpener.isAvailable()
                        ? notificationBar::showSaved
                        : (message, file) -> notificationBar.showMessage(message));
        notificationBar.onOpen(
                file -> openFile(() -> fileOpener.open(file)), file -> openFile(() -> fileOpener.showInFolder(file)));
        LensCalibrationAction lensCalibration =
                new LensCalibrationAction(model, tasks, dialogs, lensStore, notificationBar::showMessage);
        actions =
                new ApplicationActions(this, jobFiles, lensCalibration, outputActions, model, displayUnit, preferences);
        ThicknessPhotoAction thicknessPhoto =
                new ThicknessPhotoAction(model, tasks, dialogs, notificationBar::showMessage);
        knifeForm = new KnifeForm(model, lensStore, () -> showPhoto(true), thicknessPhoto);
        outlinePanel.canvas().widthProbe().onMeasure(knifeForm::editWidthAt);
        forms.add(WorkflowStage.ORDER, new OrderForm(model));
        forms.add(WorkflowStage.KNIFE, knifeForm);
        forms.add(WorkflowStage.SHEATH, new SheathForm(model));
        CutterForm cutterForm = new CutterForm(cutter, actions.saveSvg, actions.saveDxf);
        forms.add(
                WorkflowStage.PAPER,
                new PaperForm(paper, actions.savePdf, actions.printChosenPages, actions.print, cutterForm));
        drawings.add(
                new WelcomePanel(actions.saveSheet, actions.printSheet, actions.openPhoto, actions.openJob), WELCOME);
        drawings.add(photoPanel, PHOTO);
        drawings.add(outlinePanel, OUTLINE);
        drawings.add(patternPanel, PATTERN);
        drawings.add(paperPreview, PAPER);
        frame.setJMenuBar(actions.menuBar());
        frame.setContentPane(contentPane());
        JRootPane root = frame.getRootPane();
        root.setDefaultButton(nextStepBar.proposedButton());
        root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke("ctrl ENTER"), "onward");
        root.getActionMap().put("onward", new RunnableAction("Onward", "", nextStepBar.proposedButton()::doClick));
        WindowDrop.install(frame, new FileDropHandler(jobFiles::open, notificationBar::showMessage));
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
        model.subscribe(this::update);
        tasks.addListener(this::update);
        patternPanel.addListener(this::update);
        patternPanel.addListener(paper::update);
        displayUnit.addListener(() -> setUnit(displayUnit.unit()));
        setUnit(displayUnit.unit());
        goTo(WorkflowStage.KNIFE);
    }

    /**
     * Opens the window, and a job or photo in it where a file is given. Returns at once; may be called on any thread.
     */
    public static void open(Optional<Path> file) {
        System.setProperty("apple.laf.useScreenMenuBar", "true"); // for macOS; ignored elsewhere
        SwingUtilities.invokeLater(() -> {
            Preferences preferences = Preferences.userRoot().node(PREFERENCES);
            Theme.load(preferences).install();
            MainWindow window = new MainWindow(preferences, PhoneLensStore.standard(), FileOpener.ofDesktop());
            window.show();
            file.ifPresent(window.jobFiles::open);
        });
    }

    public void show() {
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> {
            String message = TaskQueue.defectMessage("showing the window", e);
            SwingUtilities.invokeLater(() -> notificationBar.showMessage(message));
        });
        if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.APP_QUIT_HANDLER)) {
            Desktop.getDesktop().setQuitHandler((quit, answer) -> {
                answer.cancelQuit(); // close() may ask the user, and ends the program itself
                close();
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

    /** Closes the window, which ends the program, unless the user cancels to keep an unsaved job. */
    void close() {
        commitFocusedField();
        jobFiles.confirmLeaving(() -> {
            tasks.close();
            frame.dispose();
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
        return paperPreview.isShowing()
                ? paperPreview.canvas()
                : patternPanel.isShowing()
                        ? patternPanel.canvas()
                        : photoPanel.isShowing() ? photoPanel.canvas() : outlinePanel.canvas();
    }

    void goTo(WorkflowStage newStage) {
        stage = newStage;
        Objects.requireNonNull(stageButtons.get(newStage)).setSelected(true);
        forms.show(newStage);
        update();
    }

    private void update() {
        if (stageButtons.isEmpty()) {
            return;
        }
        Job job = model.job();
        if (!model.openedJob().equals(openedJob)) {
            openedJob = model.openedJob();
            forms.discardUncommitted();
        }
        outlinePanel.canvas().withhold(forms.refusalText(WorkflowStage.KNIFE));
        patternPanel.withhold(forms.refusalText(WorkflowStage.SHEATH));
        photoPanel.leaveOut(traceController.error());
        nextStepBar.show(NextStepPrompt.of(
                job,
                stage,
                new NextStepPrompt.Circumstances(
                        traceController.isRunning(),
                        forms.refusalText(stage),
                        traceController.error(),
                        patternPanel.error())));
        actions.setPatternAvailable(patternPanel.pattern().isPresent()
                || forms.refusal(WorkflowStage.PAPER).isPresent());
        boolean empty = job.photo().isEmpty() && job.silhouette().isEmpty();
        boolean onKnife = stage == WorkflowStage.ORDER || stage == WorkflowStage.KNIFE;
        boolean onlyPhoto =
                job.silhouette().isEmpty() || (photoRequested && job.photo().isPresent());
        String card = empty
                ? WELCOME
                : stage == WorkflowStage.PAPER ? PAPER : !onKnife ? PATTERN : onlyPhoto ? PHOTO : OUTLINE;
        ((CardLayout) drawings.getLayout()).show(drawings, card);
        String name = model.file().map(f -> f.getFileName().toString()).orElse("not saved yet");
        fileLabel.setText(name + (model.hasUnsavedChanges() && model.file().isPresent() ? ", changed since" : ""));
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

    private void openFile(Runnable opening) {
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

    private JPanel contentPane() {
        JPanel content = new JPanel(new MigLayout("insets 0, fill"));
        JPanel northPanel = new JPanel(new MigLayout("insets 0, fillx, wrap 1, hidemode 3, gapy 0", "[grow,fill]"));
        northPanel.add(stageBar(), "wmin 0");
        northPanel.add(nextStepBar, "wmin 0");
        northPanel.add(notificationBar, "wmin 0");
        content.add(northPanel, "dock north");
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, forms, drawings);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(UIScale.scale(372));
        forms.setMinimumSize(UIScale.scale(new Dimension(260, 100)));

        JPanel statusBar = new JPanel(new MigLayout("insets 5 12 5 12", "[grow,fill][pref]"));
        statusBar.add(fileLabel, "wmin 0");
        statusBar.add(new TaskProgressBar(tasks), "hmin 24");
        content.add(statusBar, "dock south");
        content.add(split, "push, grow, wmin 0, hmin 0");
        return content;
    }

    private JPanel stageBar() {
        JPanel bar = new JPanel(new MigLayout("insets 10 12 0 12, gap 6"));
        ButtonGroup group = new ButtonGroup();
        for (WorkflowStage s : WorkflowStage.values()) {
            JToggleButton button = new JToggleButton(s.mnemonic() + "  " + s.label());
            button.setName("stage " + s.label());
            button.setMnemonic(s.mnemonic());
            button.setToolTipText(s.toolTip() + " (Alt " + s.mnemonic() + ")");
            button.addActionListener(e -> goTo(s));
            stageButtons.put(s, button);
            group.add(button);
            bar.add(button, "sizegroup stage, hmin 34, wmin 110");
        }
        bar.add(new JLabel(), "pushx");
        for (RunnableAction action : actions.toolBarActions()) {
            JButton button = new JButton(action);
            button.putClientProperty("JButton.buttonType", "toolBarButton");
            button.setMnemonic(KeyEvent.VK_UNDEFINED);
            bar.add(button);
        }
        return bar;
    }
}
