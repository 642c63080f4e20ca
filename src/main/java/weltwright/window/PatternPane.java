package weltwright.window;

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
import weltwright.bench.BenchPlan;
import weltwright.measure.Length;
import weltwright.sheath.Pattern;
import weltwright.wording.AdviceWording;

/**
 * The sheath, worked out anew as the job changes: its pattern, the cross-section, the test draw or the order of work,
 * and beneath the drawings what the maker should know before cutting.
 */
final class PatternPane extends JPanel {
    private final Map<SheathSight, JToggleButton> sights = new EnumMap<>(SheathSight.class);
    private final JPanel cards = new JPanel(new CardLayout());
    private final PatternView view = new PatternView();
    private final CrossSectionPane crossSection;
    private final TestDrawPane testDraw;
    private final WorkPane workPane = new WorkPane();
    private final HardwarePane hardware;
    private final JScrollPane scroll;
    private final WrappedText advice = new WrappedText(ThemeColors::text);
    private final List<Runnable> watchers = new ArrayList<>();
    private final Live<Pattern, BenchPlan> plan;
    private Live.State<Fitted> state = new Live.State<>(Optional.empty(), "", false);
    private Optional<BenchPlan> planned = Optional.empty();
    private SheathSight sight = SheathSight.PATTERN;

    PatternPane(Bench bench, Work work, Ruler ruler, FileAsker asker) {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]", "[][grow,fill][]"));
        crossSection = new CrossSectionPane(ruler);
        testDraw = new TestDrawPane(ruler);
        hardware = new HardwarePane(bench, work, asker);
        Form list = new Form("2 14 10 14");
        list.heading("Before you cut");
        list.wide(advice);
        scroll = new JScrollPane(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        cards.add(view, SheathSight.PATTERN.name());
        cards.add(crossSection, SheathSight.CROSS_SECTION.name());
        cards.add(testDraw, SheathSight.TEST_DRAW.name());
        cards.add(workPane, SheathSight.WORK.name());
        cards.add(hardware, SheathSight.HARDWARE.name());
        add(head(), "wmin 0");
        add(cards, "wmin 0, hmin 0, push");
        add(scroll, "h 20%, hmin 84, wmin 0");
        plan = new Live<>(
                work,
                "Putting the work in order",
                () -> state.made().map(Fitted::pattern),
                BenchPlan::of,
                this::showPlan);
        new Live<>(bench, work, "Drawing the pattern", Fitted.Asked::of, Fitted.Asked::fitted, this::showFitted);
        look(SheathSight.PATTERN);
    }

    /** The drawing that is seen; while there is none, that of the pattern. */
    Drawing drawing() {
        return switch (sight) {
            case CROSS_SECTION -> crossSection.drawing();
            case TEST_DRAW -> testDraw.drawing();
            case PATTERN, WORK, HARDWARE -> view;
        };
    }

    /** The pattern of the job as it now is; empty where there is none, or not yet. */
    Optional<Pattern> pattern() {
        return state.inWork() ? Optional.empty() : state.made().map(Fitted::pattern);
    }

    /** Why there is no pattern, for the user; or empty. */
    String trouble() {
        return state.trouble();
    }

    void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    void look(SheathSight at) {
        sight = at;
        Objects.requireNonNull(sights.get(at)).setSelected(true);
        ((CardLayout) cards.getLayout()).show(cards, at.name());
        scroll.setVisible(at == SheathSight.PATTERN || at == SheathSight.TEST_DRAW);
        revalidate();
        refresh();
    }

    /** Brings what is looked at up to date, and nothing else. */
    private void refresh() {
        switch (sight) {
            case PATTERN -> {
                view.show(state.made().map(Fitted::pattern), state.inWork());
                view.show(planned);
            }
            case CROSS_SECTION -> crossSection.show(state.made());
            case TEST_DRAW -> testDraw.show(state.made());
            case WORK -> workPane.show(planned);
            case HARDWARE -> hardware.show(planned);
        }
    }

    /** Where the keys go that move what is seen. */
    private JComponent begin(SheathSight at) {
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
        char last = (char) ('0' + Stage.values().length);
        for (SheathSight each : SheathSight.values()) {
            char key = ++last; // counted on from the keys of the stages
            JToggleButton button = new JToggleButton(each.words(), Icons.of(each.icon()));
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

    private void showFitted(Live.State<Fitted> now) {
        boolean another = !now.made().equals(state.made());
        state = now;
        if (another || sight == SheathSight.PATTERN) {
            refresh();
        }
        if (!now.inWork()) {
            plan.look();
        }
        advice.say(now.made().map(f -> told(f.pattern())).orElse(now.trouble()));
        List.copyOf(watchers).forEach(Runnable::run);
    }

    private void showPlan(Live.State<BenchPlan> now) {
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
