package weltwright.app.gui.form;

import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.JobModel;
import weltwright.job.Job;

/**
 * Ties the lines of a form to a part of the job: what is told on a line goes into that part, as a step that can be
 * undone, and what is in the job is shown on the line, wherever it came from.
 *
 * @param <S> the part
 */
public final class FormBinding<S> {
    private final JobModel bench;
    private final Function<Job, S> part;
    private final BiFunction<Job, S, Job> with;
    private boolean showing;

    /**
     * @param part of the job
     * @param with the job with another such part
     */
    public FormBinding(JobModel bench, Function<Job, S> part, BiFunction<Job, S, Job> with) {
        this.bench = bench;
        this.part = part;
        this.with = with;
    }

    /** Ties to a part of this part. */
    public <P> FormBinding<P> to(Function<S, P> inner, BiFunction<S, P, S> withInner) {
        return new FormBinding<>(
                bench, part.andThen(inner), (job, p) -> with.apply(job, withInner.apply(part.apply(job), p)));
    }

    /** What is typed on the line while the cursor is in it is one step. */
    public <T> void tie(ValidatedField<T> line, Function<S, T> get, BiFunction<S, T, S> set) {
        line.onTaken(() -> change(line.session(), s -> set.apply(s, line.value())));
        bench.watch(() -> line.show(get.apply(now())));
    }

    public <T> void tie(JComboBox<ComboBoxItem<T>> box, Function<S, T> get, BiFunction<S, T, S> set) {
        box.addActionListener(e -> change(null, s -> set.apply(s, ComboBoxItem.chosen(box))));
        show(() -> ComboBoxItem.choose(box, get.apply(now())));
    }

    public void tie(JCheckBox box, Function<S, Boolean> get, BiFunction<S, Boolean, S> set) {
        box.addActionListener(e -> change(null, s -> set.apply(s, box.isSelected())));
        show(() -> box.setSelected(get.apply(now())));
    }

    /** The part as the job now has it. */
    public S now() {
        return part.apply(bench.job());
    }

    private void show(Runnable how) {
        bench.watch(() -> {
            showing = true;
            how.run();
            showing = false;
        });
    }

    private void change(@Nullable Object session, UnaryOperator<S> how) {
        if (!showing) {
            bench.change(session, job -> with.apply(job, how.apply(part.apply(job))));
        }
    }
}
