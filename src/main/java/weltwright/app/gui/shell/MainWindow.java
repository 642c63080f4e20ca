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
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.knife.KnifeForm;
import weltwright.app.gui.knife.ThicknessPhotoAction;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.outline.OutlinePanel;
import weltwright.app.gui.outline.RectifiedImageInput;
import weltwright.app.gui.outline.TraceController;
import weltwright.app.gui.paper.CutterForm;
import weltwright.app.gui.paper.CutterPreferences;
import weltwright.app.gui.paper.OutputActions;
import weltwright.app.gui.paper.PaperForm;
import weltwright.app.gui.paper.PrinterPreferences;
import weltwright.app.gui.pattern.PatternPanel;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.LensCalibrationAction;
import weltwright.app.gui.photo.PhotoAssessmentInput;
import weltwright.app.gui.photo.PhotoPanel;
import weltwright.app.gui.sheath.SheathForm;
import weltwright.app.gui.theme.Theme;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;

/**
 * The window: four stages of a job side by side in its head, beneath them what to do next, at the left the form of the
 * stage, at the right the drawing that it changes.
 */
public final class MainWindow {
    private static final String START = "start";
    private static final String PHOTO = "photo";
    private static final String OUTLINE = "outline";
    private static final String PATTERN = "pattern";

    /** Node of the user's preferences. Its name stays when classes move, so that what is remembered is found again. */
    private static final String PREFERENCES = "weltwright/window";

    private final JFrame frame = new JFrame("Weltwright");
    private final NotificationBar notice = new NotificationBar();
    private final JobModel bench = new JobModel(Job.begin(LocalDate.now(ZoneId.systemDefault())));
    private final TaskQueue work = new TaskQueue(notice::say);
    private final TraceController tracing = new TraceController(bench, work);
    private final JobFileActions desk;
    private final OutlinePanel outline = new OutlinePanel(bench, work);
    private final PhotoPanel photo = new PhotoPanel(bench, () -> showPhoto(false));
    private final PatternPanel pattern;
    private final OutputActions output;
    private final ApplicationActions acts;
    private final KnifeForm knifeForm;
    private final WrappedText next = new WrappedText(ThemeColors::text);
    private final JButton onward = new JButton();
    private final JLabel where = new JLabel();
    private final JPanel forms = new JPanel(new CardLayout());
    private final JPanel drawings = new JPanel(new CardLayout());
    private final Map<WorkflowStage, JToggleButton> stages = new EnumMap<>(WorkflowStage.class);
    private WorkflowStage stage = WorkflowStage.KNIFE;
    private NextStepPrompt step = NextStepPrompt.of(bench.job(), stage, false, "");
    private Optional<Photo> photoSeen = Optional.empty();
    private boolean photoWanted;

    /**
     * @param memory what is remembered from one start to the next: look, printer, folder
     * @param phones the phones whose lenses were measured
     */
    public MainWindow(Preferences memory, PhoneLensStore phones) {
        FileDialogs asker = new FileDialogs(frame, memory);
        PrinterPreferences printer = new PrinterPreferences(memory);
        CutterPreferences cutter = new CutterPreferences(memory);
        desk = new JobFileActions(bench, work, frame, asker, phones, notice::say);
        DisplayUnit ruler = new DisplayUnit(memory);
        pattern = new PatternPanel(bench, work, ruler, asker);
        output = new OutputActions(bench, pattern::pattern, printer, cutter, work, asker, notice::say);
        LensCalibrationAction phoneDesk = new LensCalibrationAction(bench, work, asker, phones, notice::say);
        acts = new ApplicationActions(this, desk, phoneDesk, output, bench, ruler, memory);
        ThicknessPhotoAction thicknessPhoto = new ThicknessPhotoAction(bench, work, asker, notice::say);
        knifeForm = new KnifeForm(bench, phones, () -> showPhoto(true), thicknessPhoto);
        outline.drawing().widthPlace().onMeasuring(knifeForm::measureWidth);
        addForm(WorkflowStage.ORDER, new OrderForm(bench));
        addForm(WorkflowStage.KNIFE, knifeForm);
        addForm(WorkflowStage.SHEATH, new SheathForm(bench));
        CutterForm cutterForm = new CutterForm(cutter, acts.saveSvg, acts.saveDxf);
        addForm(WorkflowStage.PAPER, new PaperForm(printer, acts.savePdf, acts.print, cutterForm));
        drawings.add(new WelcomePanel(acts.saveSheet, acts.printSheet, acts.openPhoto, acts.openJob), START);
        drawings.add(photo, PHOTO);
        drawings.add(outline, OUTLINE);
        drawings.add(pattern, PATTERN);
        onward.setName("onward");
        onward.setToolTipText("Ctrl Enter");
        onward.putClientProperty("FlatLaf.style", "font: bold");
        onward.addActionListener(e -> step.deed().ifPresent(this::goOn));
        next.setName("next step");
        frame.setJMenuBar(acts.menuBar());
        frame.setContentPane(content());
        JRootPane root = frame.getRootPane();
        root.setDefaultButton(onward);
        root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke("ctrl ENTER"), "onward");
        root.getActionMap().put("onward", new RunnableAction("Onward", "", onward::doClick));
        frame.getRootPane().setTransferHandler(new FileDropHandler(desk::open, notice::say));
        frame.setIconImages(ToolIcons.ofWindow());
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }
        });
        new DerivedValue<>(
                bench,
                work,
                "Opening the photo",
                Job::photo,
                BackgroundImage::asTaken,
                state -> photo.drawing().show(state.made()));
        new DerivedValue<>(
                bench,
                work,
                "Turning the photo to be seen from above",
                RectifiedImageInput::of,
                RectifiedImageInput::picture,
                state -> outline.drawing().show(state.made()));
        new DerivedValue<>(
                bench,
                work,
                "Looking at the photo",
                PhotoAssessmentInput::of,
                PhotoAssessmentInput::look,
                this::lookedAt);
        bench.watch(this::look);
        work.watch(this::look);
        pattern.watch(this::look);
        go(WorkflowStage.KNIFE);
    }

    /** Opens the window, with a job or a photo in it where a file is given. Returns at once. */
    public static void open(Optional<Path> file) {
        System.setProperty("apple.laf.useScreenMenuBar", "true"); // heeded on a Mac alone
        SwingUtilities.invokeLater(() -> {
            Preferences memory = Preferences.userRoot().node(PREFERENCES);
            Theme.chosen(memory).wear();
            MainWindow window = new MainWindow(memory, PhoneLensStore.usual());
            window.appear();
            file.ifPresent(window.desk::open);
        });
    }

    public void appear() {
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> {
            String message = TaskQueue.defect("showing the window", e);
            SwingUtilities.invokeLater(() -> notice.say(message));
        });
        if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.APP_QUIT_HANDLER)) {
            Desktop.getDesktop().setQuitHandler((quit, answer) -> {
                answer.cancelQuit(); // the window may have something to ask; it ends the program itself
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

    public JobModel bench() {
        return bench;
    }

    /** The pattern of the job as it now is; empty where there is none, or not yet. */
    public Optional<Pattern> pattern() {
        return pattern.pattern();
    }

    /** Closes the window and with it the program, unless the user wants to keep an unsaved job. */
    void close() {
        takeWhatIsTyped();
        desk.leave(() -> {
            work.close();
            frame.dispose();
        });
    }

    /** What stands in a line but was not yet left is in the job before it is saved or closed. */
    void takeWhatIsTyped() {
        if (frame.getFocusOwner() instanceof JTextField line) {
            line.postActionEvent();
        }
    }

    /** The drawing that is seen. */
    DrawingCanvas drawing() {
        return pattern.isShowing() ? pattern.drawing() : photo.isShowing() ? photo.drawing() : outline.drawing();
    }

    void go(WorkflowStage to) {
        stage = to;
        Objects.requireNonNull(stages.get(to)).setSelected(true);
        ((CardLayout) forms.getLayout()).show(forms, to.name());
        look();
    }

    private void look() {
        if (stages.isEmpty()) {
            return;
        }
        Job job = bench.job();
        acts.patternIsThere(pattern.pattern().isPresent());
        step = NextStepPrompt.of(job, stage, tracing.running(), pattern.trouble());
        next.say(step.words());
        onward.setVisible(step.deed().isPresent());
        step.deed().ifPresent(deed -> onward.setText(deed.words()));
        boolean empty = job.photo().isEmpty() && job.silhouette().isEmpty();
        boolean onKnife = stage == WorkflowStage.ORDER || stage == WorkflowStage.KNIFE;
        boolean onlyPhoto =
                job.silhouette().isEmpty() || (photoWanted && job.photo().isPresent());
        String shown = empty ? START : !onKnife ? PATTERN : onlyPhoto ? PHOTO : OUTLINE;
        ((CardLayout) drawings.getLayout()).show(drawings, shown);
        String name = bench.file().map(f -> f.getFileName().toString()).orElse("not saved yet");
        where.setText(name + (bench.unsaved() && bench.file().isPresent() ? ", changed since" : ""));
        String whose = Stream.of(job.knifeName(), job.customer())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        frame.setTitle((bench.unsaved() ? "* " : "") + (whose.isEmpty() ? "" : whose + " – ") + "Weltwright");
        if (!photoSeen.equals(job.photo())) {
            photoSeen = job.photo();
            photoWanted = false;
            if (job.silhouette().isEmpty() && job.photo().isPresent()) {
                go(WorkflowStage.KNIFE);
                knifeForm.begin();
            }
        }
    }

    /** Whether the photo is seen as it was taken, though there is an outline. */
    private void showPhoto(boolean wanted) {
        photoWanted = wanted;
        go(WorkflowStage.KNIFE);
        if (wanted) {
            photo.drawing().requestFocusInWindow();
        }
    }

    private void lookedAt(DerivedValue.State<PhotoAssessment> state) {
        photo.show(state);
        Optional<PhotoAssessment> look = state.inWork() ? Optional.empty() : state.made();
        outline.drawing().ground().find(look.flatMap(PhotoAssessment::ground));
        outline.drawing().groundChanged();
        if (look.map(PhotoAssessment::pitchAsked).orElse(false)) {
            knifeForm.askForPitch();
        }
    }

    private void goOn(NextStepPrompt.Deed deed) {
        switch (deed) {
            case OPEN_PHOTO -> desk.openChosenPhoto();
            case FIND_OUTLINE -> {
                photoWanted = false;
                tracing.trace();
            }
            case GO_TO_KNIFE -> go(WorkflowStage.KNIFE);
            case GO_TO_SHEATH -> go(WorkflowStage.SHEATH);
            case GO_TO_PAPER -> go(WorkflowStage.PAPER);
            case SAVE_PDF -> output.savePdf();
        }
    }

    private JPanel content() {
        JPanel content = new JPanel(new MigLayout("insets 0, fill"));
        JPanel top = new JPanel(new MigLayout("insets 0, fillx, wrap 1, hidemode 3, gapy 0", "[grow,fill]"));
        top.add(head(), "wmin 0");
        JPanel guide = new JPanel(new WrappedTextLayout("insets 8 16 10 12, fillx, hidemode 3", "[grow,fill]12[]"));
        guide.add(next, "wmin 0");
        guide.add(onward, "hmin 32");
        top.add(guide, "wmin 0");
        top.add(notice, "wmin 0");
        content.add(top, "dock north");
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, forms, drawings);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(UIScale.scale(372));
        forms.setMinimumSize(UIScale.scale(new Dimension(260, 100)));

        JPanel foot = new JPanel(new MigLayout("insets 5 12 5 12", "[grow,fill][pref]"));
        foot.add(where, "wmin 0");
        foot.add(new TaskProgressBar(work), "hmin 24");
        content.add(foot, "dock south");
        content.add(split, "push, grow, wmin 0, hmin 0");
        return content;
    }

    private JPanel head() {
        JPanel head = new JPanel(new MigLayout("insets 10 12 0 12, gap 6"));
        ButtonGroup group = new ButtonGroup();
        for (WorkflowStage s : WorkflowStage.values()) {
            JToggleButton button = new JToggleButton(s.key() + "  " + s.words());
            button.setName("stage " + s.words());
            button.setMnemonic(s.key());
            button.setToolTipText(s.tip() + " (Alt " + s.key() + ")");
            button.addActionListener(e -> go(s));
            stages.put(s, button);
            group.add(button);
            head.add(button, "sizegroup stage, hmin 34, wmin 110");
        }
        head.add(new JLabel(), "pushx");
        for (RunnableAction act : acts.handy()) {
            JButton button = new JButton(act);
            button.putClientProperty("JButton.buttonType", "toolBarButton");
            button.setMnemonic(KeyEvent.VK_UNDEFINED);
            head.add(button);
        }
        return head;
    }

    private void addForm(WorkflowStage of, FormPanel form) {
        JScrollPane scroll = new JScrollPane(form);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        forms.add(scroll, of.name());
    }
}
