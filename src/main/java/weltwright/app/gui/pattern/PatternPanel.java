package weltwright.app.gui.pattern;

import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.assembled.CrossSectionPanel;
import weltwright.app.gui.assembled.TestDrawPanel;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.WrappedText;
import weltwright.assembly.AssemblyPlan;
import weltwright.job.SheathDesign;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.MeasureUnit;
import weltwright.wording.AdviceWording;

/**
 * The sheath in one of several tabs: pattern, cross-section, test draw or hardware, with advice beneath. The design and
 * its plan are computed in the background as the job changes; only the selected tab is updated.
 */
public final class PatternPanel extends JPanel {
    private final JobModel model;
    private final Map<PatternTab, JToggleButton> tabButtons = new EnumMap<>(PatternTab.class);
    private final JPanel cards = new JPanel(new CardLayout());
    private final PatternCanvas patternCanvas = new PatternCanvas();
    private final CrossSectionPanel crossSection;
    private final TestDrawPanel testDraw;
    private final HardwarePanel hardware;
    private final JScrollPane adviceScrollPane;
    private final WrappedText advice = new WrappedText(ThemeColors::text);
    private final List<Runnable> listeners = new ArrayList<>();
    private final DerivedValue<PlanInput, AssemblyPlan> derivedPlan;
    private DerivedValue.State<SheathDesign> state = new DerivedValue.State<>(Optional.empty(), "", false);
    private String withheld = "";
    private Optional<AssemblyPlan> plan = Optional.empty();
    private PatternTab tab = PatternTab.PATTERN;

    public PatternPanel(JobModel model, TaskQueue tasks, DisplayUnit displayUnit, FileDialogs dialogs) {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]", "[][grow,fill][]"));
        this.model = model;
        crossSection = new CrossSectionPanel(displayUnit);
        testDraw = new TestDrawPanel(displayUnit);
        hardware = new HardwarePanel(model, tasks, dialogs);
        FormPanel adviceForm = new FormPanel("2 14 10 14");
        adviceForm.addHeading("Before you cut");
        adviceForm.addFullWidth(advice);
        adviceScrollPane = new JScrollPane(adviceForm);
        adviceScrollPane.setBorder(BorderFactory.createEmptyBorder());
        cards.add(patternCanvas, PatternTab.PATTERN.name());
        cards.add(crossSection, PatternTab.CROSS_SECTION.name());
        cards.add(testDraw, PatternTab.TEST_DRAW.name());
        cards.add(hardware, PatternTab.HARDWARE.name());
        add(tabBar(), "wmin 0");
        add(cards, "wmin 0, hmin 0, push");
        add(adviceScrollPane, "h 20%, hmin 84, wmin 0");
        derivedPlan = new DerivedValue<>(
                tasks,
                "Putting the work in order",
                () -> state.value().map(design -> new PlanInput(design.pattern(), model.unit())),
                input -> AssemblyPlan.of(input.pattern(), input.unit()),
                this::setPlan);
        new DerivedValue<>(
                model,
                tasks,
                "Drawing the pattern",
                SheathDesign.Input::of,
                SheathDesign.Input::design,
                this::setDesign);
        showTab(PatternTab.PATTERN);
        model.subscribe(this::updateUnit);
    }

    private void updateUnit() {
        patternCanvas.setUnit(model.unit());
        derivedPlan.update();
        updateAdvice();
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
        return shown().error();
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
            updateAdvice();
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
        adviceScrollPane.setVisible(newTab == PatternTab.PATTERN || newTab == PatternTab.TEST_DRAW);
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
        char last = (char) ('0' + WorkflowStage.values().length);
        for (PatternTab each : PatternTab.values()) {
            char key = ++last; // follows the keys of the stages
            JToggleButton button = new JToggleButton(each.label(), ToolIcons.icon(each.icon()));
            button.setName("tab " + each.label());
            button.setMnemonic(key);
            button.setToolTipText(each.toolTip() + " (Alt " + key + ")");
            button.addActionListener(e -> {
                showTab(each);
                initialFocus(each).requestFocusInWindow();
            });
            group.add(button);
            tabButtons.put(each, button);
            head.add(button);
        }
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
        }
        updateAdvice();
        List.copyOf(listeners).forEach(Runnable::run);
    }

    private void updateAdvice() {
        advice.showText(shown().value()
                .map(design -> describe(design.pattern(), model.unit()))
                .orElse(shown().error()));
    }

    private void setPlan(DerivedValue.State<AssemblyPlan> newState) {
        boolean changed = !newState.value().equals(plan);
        plan = newState.value();
        if (changed) {
            update();
        }
    }

    private static String describe(Pattern pattern, MeasureUnit unit) {
        String sizes = pattern.sizes().stream()
                .map(size -> size.name() + " " + unit.format(Math.round(size.lengthMm() * 10) / 10.0))
                .collect(Collectors.joining(", "));
        List<String> lines = new ArrayList<>();
        pattern.advice().forEach(advice -> lines.add("• " + AdviceWording.line(advice, unit)));
        if (!sizes.isEmpty()) {
            lines.add("• Sizes: " + sizes + ".");
        }
        return String.join("\n", lines);
    }
}
