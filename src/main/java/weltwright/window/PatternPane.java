package weltwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import weltwright.job.Job;
import weltwright.knife.Knife;
import weltwright.measure.Length;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SheathSpec;

/** The pattern, drawn anew as the job changes, and beneath it what the maker should know before cutting. */
final class PatternPane extends JPanel {
    private final PatternView view = new PatternView();
    private final WrappedText advice = new WrappedText(Look::text);
    private final List<Runnable> watchers = new ArrayList<>();
    private Live.State<Pattern> state = new Live.State<>(Optional.empty(), "", false);

    PatternPane(Bench bench, Work work) {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0", "[grow,fill]", "[grow,fill][]"));
        Form list = new Form();
        list.heading("Before you cut");
        list.wide(advice);
        JScrollPane scroll = new JScrollPane(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(view, "wmin 0, hmin 0, push");
        add(scroll, "hmax 30%, hmin 0, wmin 0");
        new Live<>(bench, work, "Drawing the pattern", Asked::of, Asked::pattern, this::show);
    }

    PatternView drawing() {
        return view;
    }

    /** The pattern of the job as it now is; empty where there is none, or not yet. */
    Optional<Pattern> pattern() {
        return state.inWork() ? Optional.empty() : state.made();
    }

    /** Why there is no pattern, for the user; or empty. */
    String trouble() {
        return state.trouble();
    }

    void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    private void show(Live.State<Pattern> now) {
        state = now;
        view.show(now);
        advice.say(now.made().map(PatternPane::told).orElse(now.trouble()));
        List.copyOf(watchers).forEach(Runnable::run);
    }

    private static String told(Pattern pattern) {
        String sizes = pattern.sizes().stream()
                .map(size -> size.name() + " " + new Length(Math.round(size.lengthMm() * 10) / 10.0).inMillimetres())
                .collect(Collectors.joining(", "));
        List<String> lines = new ArrayList<>();
        pattern.advice().forEach(line -> lines.add("• " + line));
        if (!sizes.isEmpty()) {
            lines.add("• Sizes: " + sizes + ".");
        }
        return String.join("\n", lines);
    }

    /** What a pattern follows from. */
    private record Asked(Knife knife, SheathSpec spec) {
        static Optional<Asked> of(Job job) {
            return job.silhouette().map(s -> new Asked(job.knife(), job.spec()));
        }

        Pattern pattern() {
            return PatternMaker.make(knife, spec);
        }
    }
}
