package weltwright.app.gui.pattern;

import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.ButtonGroup;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.assembled.CrossSectionPanel;
import weltwright.app.gui.assembled.TestDrawPanel;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.TapeButton;
import weltwright.app.gui.finding.Finding;
import weltwright.app.gui.finding.FindingList;
import weltwright.app.gui.finding.FindingsPanel;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.assembly.AssemblyPlan;
import weltwright.job.SheathDesign;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Severity;
import weltwright.units.MeasureUnit;
import weltwright.wording.AdviceWording;

/**
 * The sheath in one of several tabs: pattern, cross-section, test draw or hardware, with the findings beneath. The
 * design and its plan are computed in the background as the job changes; only the selected tab is updated.
 */
public final class PatternPanel extends JPanel {
    private static final Messages TEXTS = Messages.of(PatternPanel.class);

    private final JobModel model;
    private final Map<PatternTab, JToggleButton> tabButtons = new EnumMap<>(PatternTab.class);
    private final JPanel cards = new JPanel(new CardLayout());
    private final PatternCanvas patternCanvas = new PatternCanvas();
    private final CrossSectionPanel crossSection;
    private final TestDrawPanel testDraw;
    private final HardwarePanel hardware;
    private final FindingList findings;
    private Map<Advice, AdviceRemedies.Remedy> remedies = Map.of();
    private boolean remediesShown;
    private final DerivedValue<RemedyInput, Map<Advice, AdviceRemedies.Remedy>> derivedRemedies;
    private final List<Runnable> listeners = new ArrayList<>();
    private final DerivedValue<PlanInput, AssemblyPlan> derivedPlan;
    private DerivedValue.State<SheathDesign> state = new DerivedValue.State<>(Optional.empty(), "", false);
    private String withheld = "";
    private Optional<AssemblyPlan> plan = Optional.empty();
    private PatternTab tab = PatternTab.PATTERN;

    /** @param findings receives what the checks of the sheath find */
    public PatternPanel(
            JobModel model, TaskQueue tasks, DisplayUnit displayUnit, FileDialogs dialogs, FindingList findings) {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]", "[][grow,fill]"));
        this.model = model;
        this.findings = findings;
        crossSection = new CrossSectionPanel(displayUnit);
        testDraw = new TestDrawPanel(displayUnit);
        hardware = new HardwarePanel(model, tasks, dialogs);
        cards.add(patternCanvas, PatternTab.PATTERN.name());
        cards.add(crossSection, PatternTab.CROSS_SECTION.name());
        cards.add(testDraw, PatternTab.TEST_DRAW.name());
        cards.add(hardware, PatternTab.HARDWARE.name());
        add(tabBar(), "wmin 0");
        add(FindingsPanel.beneath(cards, findings), "wmin 0, hmin 0, push");
        derivedRemedies = new DerivedValue<>(
                new TaskQueue(message -> {}), // another than that of the window: nobody waits for it
                TEXTS.text("pattern-panel.looking-for-remedies"),
                this::remedyInput,
                (input, progress) -> AdviceRemedies.of(input.input(), input.pattern(), progress),
                this::setRemedies);
        derivedPlan = new DerivedValue<>(
                tasks,
                TEXTS.text("pattern-panel.putting-the-work-in-order"),
                () -> state.value().map(design -> new PlanInput(design.pattern(), model.unit())),
                input -> AssemblyPlan.of(input.pattern(), input.unit()),
                this::setPlan);
        new DerivedValue<>(
                model,
                tasks,
                TEXTS.text("pattern-panel.drawing-the-pattern"),
                SheathDesign.Input::of,
                SheathDesign.Input::design,
                this::setDesign);
        showTab(PatternTab.PATTERN);
        model.subscribe(this::updateUnit);
        findings.addListener(this::openedOrClosed);
    }

    /** Looks for remedies only while they are shown: each takes a pattern to be made. */
    private void openedOrClosed() {
        if (findings.isOpen() != remediesShown) {
            remediesShown = findings.isOpen();
            derivedRemedies.update();
        }
    }

    private void updateUnit() {
        patternCanvas.setUnit(model.unit());
        derivedPlan.update();
        updateFindings();
    }

    /** What the remedies follow from. */
    private record RemedyInput(SheathDesign.Input input, Pattern pattern) {}

    private Optional<RemedyInput> remedyInput() {
        return state.computing() || !findings.isOpen()
                ? Optional.empty()
                : state.value()
                        .flatMap(design -> SheathDesign.Input.of(model.job())
                                .map(input -> new RemedyInput(input, design.pattern())));
    }

    private void setRemedies(DerivedValue.State<Map<Advice, AdviceRemedies.Remedy>> newState) {
        remedies = newState.computing() ? Map.of() : newState.value().orElse(Map.of());
        updateFindings();
    }

    /** What a plan follows from; its texts have lengths. */
    private record PlanInput(Pattern pattern, MeasureUnit unit) {}

    /** Returns the canvas of the selected tab; that of the pattern for a tab without one. */
    public DrawingCanvas canvas() {
        return switch (tab) {
            case CROSS_SECTION -> crossSection.canvas();
            case TEST_DRAW -> testDraw.canvas();
            case PATTERN, HARDWARE -> patternCanvas;
        };
    }

    /** Returns the pattern of the present job; empty while it is being computed and where there is none. */
    public Optional<Pattern> pattern() {
        return shown().computing() ? Optional.empty() : shown().value().map(SheathDesign::pattern);
    }

    /** Returns why the pattern could not be made, for the user; else empty. */
    public String error() {
        return shown().error(model.unit());
    }

    /**
     * Shows no design while an entry is refused on which it depends.
     *
     * @param reason why it was refused, for the user; empty where none is
     */
    public void withhold(String reason) {
        if (!reason.equals(withheld)) {
            withheld = reason;
            update();
            updateFindings();
        }
    }

    /** Takes what is being typed in a table; where it is refused, shows it and returns false. */
    public boolean commitEntry() {
        boolean taken = hardware.commitEntry();
        if (!taken) {
            showTab(PatternTab.HARDWARE);
        }
        return taken;
    }

    private DerivedValue.State<SheathDesign> shown() {
        return withheld.isEmpty() ? state : new DerivedValue.State<>(Optional.empty(), withheld, false);
    }

    private Optional<AssemblyPlan> shownPlan() {
        return plan.filter(made -> withheld.isEmpty());
    }

    /** Adds a listener that is called whenever pattern or error have changed. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    void showTab(PatternTab newTab) {
        tab = newTab;
        Objects.requireNonNull(tabButtons.get(newTab)).setSelected(true);
        ((CardLayout) cards.getLayout()).show(cards, newTab.name());
        revalidate();
        update();
    }

    /** Updates the selected tab. */
    private void update() {
        switch (tab) {
            case PATTERN -> {
                patternCanvas.setPattern(shown().value().map(SheathDesign::pattern), shown().computing());
                patternCanvas.setPlan(shownPlan());
            }
            case CROSS_SECTION -> crossSection.setDesign(shown().value());
            case TEST_DRAW -> testDraw.setDesign(shown().value());
            case HARDWARE -> hardware.setPlan(shownPlan());
        }
    }

    /** Returns the component that gets the focus with a tab. */
    private JComponent initialFocus(PatternTab newTab) {
        return switch (newTab) {
            case PATTERN -> patternCanvas;
            case CROSS_SECTION -> crossSection.stationCanvas();
            case TEST_DRAW -> testDraw.canvas();
            case HARDWARE -> hardware.stockTable();
        };
    }

    private JPanel tabBar() {
        JPanel head = new JPanel(new MigLayout("insets 6 8 4 8, gap 2"));
        ButtonGroup group = new ButtonGroup();
        int last = WorkflowStage.values().length;
        for (PatternTab each : PatternTab.values()) {
            char key = (char) ('0' + ++last % 10); // follows the keys of the stages; after 9 comes 0
            JToggleButton button = new JToggleButton(each.label(), ToolIcons.icon(each.icon()));
            button.setName("tab " + each.label());
            button.setMnemonic(key);
            button.setToolTipText(TEXTS.text("pattern-panel.alt", each.toolTip(), key));
            button.addActionListener(e -> {
                showTab(each);
                initialFocus(each).requestFocusInWindow();
            });
            group.add(button);
            tabButtons.put(each, button);
            head.add(button);
        }
        head.add(new JLabel(), "pushx");
        head.add(new TapeButton(List.of(patternCanvas, crossSection.canvas()), this::canvas));
        return head;
    }

    private void setDesign(DerivedValue.State<SheathDesign> newState) {
        boolean changed = !newState.value().equals(state.value());
        state = newState;
        if (changed || tab == PatternTab.PATTERN) {
            update();
        }
        if (!newState.computing()) {
            derivedPlan.update();
            derivedRemedies.update();
        }
        updateFindings();
        List.copyOf(listeners).forEach(Runnable::run);
    }

    private void updateFindings() {
        List<Finding> found = new ArrayList<>();
        if (!shown().error().isEmpty()) {
            found.add(new Finding(Finding.Place.SHEATH, Severity.STOP, error(), () -> {}));
        }
        shown().value().ifPresent(design -> {
            design.pattern().advice().forEach(advice -> found.add(finding(advice, design)));
            sizes(design.pattern()).ifPresent(found::add);
        });
        findings.set(Finding.Place.SHEATH, found);
    }

    private Finding finding(Advice advice, SheathDesign design) {
        Optional<Finding.Remedy> remedy = Optional.ofNullable(remedies.get(advice))
                .map(found -> new Finding.Remedy(
                        found.label(model.unit()), () -> model.change(job -> job.withSpec(found.spec()))));
        return new Finding(
                Finding.Place.SHEATH,
                advice.severity(),
                AdviceWording.sentence(advice, model.unit()),
                () -> showPlace(AdvicePlace.of(advice, design)),
                remedy);
    }

    private Optional<Finding> sizes(Pattern pattern) {
        Messages texts = Messages.of(PatternPanel.class).withUnit(model.unit());
        String sizes = pattern.sizes().stream()
                .map(size -> texts.text("size", size.name(), size.lengthMm()))
                .collect(Collectors.joining(", "));
        return sizes.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(
                        Finding.Place.SHEATH,
                        Severity.NOTE,
                        texts.text("sizes", sizes),
                        () -> showTab(PatternTab.PATTERN)));
    }

    /** Shows the tab in which a place is seen, and marks it there. */
    private void showPlace(AdvicePlace place) {
        if (place instanceof AdvicePlace.Stretch stretch) {
            showTab(PatternTab.CROSS_SECTION);
            crossSection.mark(stretch.fromMm(), stretch.toMm());
        } else if (place instanceof AdvicePlace.Holes holes) {
            showTab(PatternTab.PATTERN);
            patternCanvas.mark(holes);
        } else {
            showTab(place instanceof AdvicePlace.Draw ? PatternTab.TEST_DRAW : PatternTab.PATTERN);
        }
        initialFocus(tab).requestFocusInWindow();
    }

    private void setPlan(DerivedValue.State<AssemblyPlan> newState) {
        boolean changed = !newState.value().equals(plan);
        plan = newState.value();
        if (changed) {
            update();
        }
    }
}
