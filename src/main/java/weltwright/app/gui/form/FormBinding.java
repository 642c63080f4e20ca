package weltwright.app.gui.form;

import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.app.gui.model.JobModel;
import weltwright.job.Job;

/**
 * Binds the components of a form to a part of the job in both directions: an edit changes that part, as a step that can
 * be undone, and each change of the job updates the components. Each component has a getter and a setter of its own, so
 * an edit leaves all other values of the job unchanged to the last bit.
 *
 * @param <S> part of the job
 */
public final class FormBinding<S> {
    private final JobModel model;
    private final Function<Job, S> getter;
    private final BiFunction<Job, S, Job> setter;
    private boolean updating;

    /**
     * @param getter returns the part of a job
     * @param setter returns the job with another part
     */
    public FormBinding(JobModel model, Function<Job, S> getter, BiFunction<Job, S, Job> setter) {
        this.model = model;
        this.getter = getter;
        this.setter = setter;
    }

    /** Returns a binding to a part of this part. */
    public <P> FormBinding<P> nested(Function<S, P> innerGetter, BiFunction<S, P, S> innerSetter) {
        return new FormBinding<>(
                model,
                getter.andThen(innerGetter),
                (job, p) -> setter.apply(job, innerSetter.apply(getter.apply(job), p)));
    }

    /** Binds a field; all edits between gaining and losing the focus are one undo step. */
    public <T> void bind(ValidatedField<T> field, Function<S, T> getter, BiFunction<S, T, S> setter) {
        field.onCommit(() -> model.change(
                field.editSession(),
                job -> this.setter
                        .apply(job, setter.apply(this.getter.apply(job), field.value()))
                        .withTyped(field.name(), field.typedText())));
        model.subscribe(
                () -> field.setValue(getter.apply(current()), model.job().typedText(field.name())));
    }

    public <T> void bind(JComboBox<ComboBoxItem<T>> box, Function<S, T> getter, BiFunction<S, T, S> setter) {
        box.addActionListener(e -> change(s -> setter.apply(s, ComboBoxItem.selected(box))));
        bindView(() -> ComboBoxItem.select(box, getter.apply(current())));
    }

    public <T> void bind(PictureChoice<T> choice, Function<S, T> getter, BiFunction<S, T, S> setter) {
        choice.onSelection(value -> change(s -> setter.apply(s, value)));
        bindView(() -> choice.select(getter.apply(current())));
    }

    public void bind(JCheckBox box, Function<S, Boolean> getter, BiFunction<S, Boolean, S> setter) {
        box.addActionListener(e -> change(s -> setter.apply(s, box.isSelected())));
        bindView(() -> box.setSelected(getter.apply(current())));
    }

    /** Returns the part of the present job. */
    public S current() {
        return getter.apply(model.job());
    }

    private void bindView(Runnable edit) {
        model.subscribe(() -> {
            updating = true;
            edit.run();
            updating = false;
        });
    }

    private void change(UnaryOperator<S> edit) {
        if (!updating) {
            model.change(job -> setter.apply(job, edit.apply(getter.apply(job))));
        }
    }
}
