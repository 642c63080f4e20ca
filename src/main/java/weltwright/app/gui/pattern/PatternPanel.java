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
import weltwright.units.Length;
import weltwright.wording.AdviceWording;

/**
 * The sheath, worked out anew as the job changes: its pattern, the cross-section, the test draw or the order of work,
 * and beneath the drawings what the maker should know before cutting.
 */
public final class PatternPanel extends JPanel {
    private final Map<SheathView, JToggleButton> sights = new EnumMap<>(SheathView.class);
    private final JPanel cards = new JPanel(new CardLayout());
    private final PatternCanvas view = new PatternCanvas();
    private final CrossSectionPanel crossSection;
    private final TestDrawPanel testDraw;
    private final OrderOfWorkPanel workPane = new OrderOfWorkPanel();
    private final HardwarePanel hardware;
    private final JScrollPane scroll;
    private final WrappedText advice = new WrappedText(ThemeColors::text);
    private final List<Runnable> watchers = new ArrayList<>();
    private final DerivedValue<Pattern, AssemblyPlan> plan;
    private DerivedValue.State<SheathDesign> state = new DerivedValue.State<>(Optional.empty(), "", false);
    private Optional<AssemblyPlan> planned = Optional.empty();
    private SheathView sight = SheathView.PATTERN;

    public PatternPanel(JobModel bench, TaskQueue work, DisplayUnit ruler, FileDialogs asker) {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]", "[][grow,fill][]"));
        crossSection = new CrossSectionPanel(ruler);
        testDraw = new TestDrawPanel(ruler);
        hardware = new HardwarePanel(bench, work, asker);
        FormPanel list = new FormPanel("2 14 10 14");
        list.heading("Before you cut");
        list.wide(advice);
        scroll = new JScrollPane(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        cards.add(view, SheathView.PATTERN.name());
        cards.add(crossSection, SheathView.CROSS_SECTION.name());
        cards.add(testDraw, SheathView.TEST_DRAW.name());
        cards.add(workPane, SheathView.WORK.name());
        cards.add(hardware, SheathView.HARDWARE.name());
        add(head(), "wmin 0");
        add(cards, "wmin 0, hmin 0, push");
        add(scroll, "h 20%, hmin 84, wmin 0");
        plan = new DerivedValue<>(
                work,
                "Putting the work in order",
                () -> state.made().map(SheathDesign::pattern),
                AssemblyPlan::of,
                this::showPlan);
        new DerivedValue<>(
                bench,
                work,
                "Drawing the pattern",
                SheathDesign.Asked::of,
                SheathDesign.Asked::fitted,
                this::showFitted);
        look(SheathView.PATTERN);
    }

    /** The drawing that is seen; while there is none, that of the pattern. */
    public DrawingCanvas drawing() {
        return switch (sight) {
            case CROSS_SECTION -> crossSection.drawing();
            case TEST_DRAW -> testDraw.drawing();
            case PATTERN, WORK, HARDWARE -> view;
        };
    }

    /** The pattern of the job as it now is; empty where there is none, or not yet. */
    public Optional<Pattern> pattern() {
        return state.inWork() ? Optional.empty() : state.made().map(SheathDesign::pattern);
    }

    /** Why there is no pattern, for the user; or empty. */
    public String trouble() {
        return state.trouble();
    }

    public void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    void look(SheathView at) {
        sight = at;
        Objects.requireNonNull(sights.get(at)).setSelected(true);
        ((CardLayout) cards.getLayout()).show(cards, at.name());
        scroll.setVisible(at == SheathView.PATTERN || at == SheathView.TEST_DRAW);
        revalidate();
        refresh();
    }

    /** Brings what is looked at up to date, and nothing else. */
    private void refresh() {
        switch (sight) {
            case PATTERN -> {
                view.show(state.made().map(SheathDesign::pattern), state.inWork());
                view.show(planned);
            }
            case CROSS_SECTION -> crossSection.show(state.made());
            case TEST_DRAW -> testDraw.show(state.made());
            case WORK -> workPane.show(planned);
            case HARDWARE -> hardware.show(planned);
        }
    }

    /** Where the keys go that move what is seen. */
    private JComponent begin(SheathView at) {
        return switch (at) {
            case PATTERN -> view;
            case CROSS_SECTION -> crossSection.where();
            case TEST_DRAW -> testDraw.drawing();
            case WORK -> workPane.table();
            case HARDWARE -> hardware.table();
        };
    }

    private JPanel head() {
        JPanel head = new JPanel(new MigLayout("insets 6 8 4 8, gap 2"));
        ButtonGroup group = new ButtonGroup();
        char last = (char) ('0' + WorkflowStage.values().length);
        for (SheathView each : SheathView.values()) {
            char key = ++last; // counted on from the keys of the stages
            JToggleButton button = new JToggleButton(each.words(), ToolIcons.of(each.icon()));
            button.setName("sight " + each.words());
            button.setMnemonic(key);
            button.setToolTipText(each.tip() + " (Alt " + key + ")");
            button.addActionListener(e -> {
                look(each);
                begin(each).requestFocusInWindow();
            });
            group.add(button);
            sights.put(each, button);
            head.add(button);
        }
        return head;
    }

    private void showFitted(DerivedValue.State<SheathDesign> now) {
        boolean another = !now.made().equals(state.made());
        state = now;
        if (another || sight == SheathView.PATTERN) {
            refresh();
        }
        if (!now.inWork()) {
            plan.look();
        }
        advice.say(now.made().map(f -> told(f.pattern())).orElse(now.trouble()));
        List.copyOf(watchers).forEach(Runnable::run);
    }

    private void showPlan(DerivedValue.State<AssemblyPlan> now) {
        boolean another = !now.made().equals(planned);
        planned = now.made();
        if (another) {
            refresh();
        }
    }

    private static String told(Pattern pattern) {
        String sizes = pattern.sizes().stream()
                .map(size -> size.name() + " " + new Length(Math.round(size.lengthMm() * 10) / 10.0).inMillimetres())
                .collect(Collectors.joining(", "));
        List<String> lines = new ArrayList<>();
        pattern.advice().forEach(advice -> lines.add("• " + AdviceWording.line(advice)));
        if (!sizes.isEmpty()) {
            lines.add("• Sizes: " + sizes + ".");
        }
        return String.join("\n", lines);
    }
}
