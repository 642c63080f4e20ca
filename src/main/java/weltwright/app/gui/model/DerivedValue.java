package weltwright.app.gui.model;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.trace.ProgressListener;
import weltwright.units.MeasureUnit;
import weltwright.units.UnitAwareException;

/**
 * A value that is a function of an input, such as the pattern of the job, and is computed again in the background
 * whenever the input changes. A computation whose input has changed meanwhile is cancelled. Used on the event thread
 * only.
 *
 * @param <I> input, compared by {@code equals}
 * @param <V> value
 */
public final class DerivedValue<I, V> {
    private final TaskQueue tasks;
    private final String title;
    private final Supplier<Optional<I>> inputSupplier;
    private final BiFunction<I, ProgressListener, V> function;
    private final Consumer<State<V>> stateListener;
    private Optional<I> input = Optional.empty();
    private Optional<TaskQueue.SubmittedTask<?>> running = Optional.empty();
    private State<V> state = new State<>(Optional.empty(), "", false);

    /**
     * Creates a value that is updated with each change of the job.
     *
     * @param title of the task, for the user
     * @param inputSupplier takes the input from the job; empty where the job has none yet
     * @param function computes the value, off the event thread; a {@link UserFacingException} becomes the state's error
     * @param stateListener receives each new state
     */
    public DerivedValue(
            JobModel model,
            TaskQueue tasks,
            String title,
            Function<Job, Optional<I>> inputSupplier,
            Function<I, V> function,
            Consumer<State<V>> stateListener) {
        this(tasks, title, () -> inputSupplier.apply(model.job()), function, stateListener);
        model.subscribe(this::update);
    }

    /** Creates a value with an input from elsewhere, which is read at each call of {@link #update} and only then. */
    public DerivedValue(
            TaskQueue tasks,
            String title,
            Supplier<Optional<I>> inputSupplier,
            Function<I, V> function,
            Consumer<State<V>> stateListener) {
        this(tasks, title, inputSupplier, (input, progress) -> function.apply(input), stateListener);
    }

    /**
     * Creates a value whose function reports its progress.
     *
     * @param function gives up at its next report, by an exception, where its input has changed meanwhile
     */
    public DerivedValue(
            TaskQueue tasks,
            String title,
            Supplier<Optional<I>> inputSupplier,
            BiFunction<I, ProgressListener, V> function,
            Consumer<State<V>> stateListener) {
        this.tasks = tasks;
        this.title = title;
        this.inputSupplier = inputSupplier;
        this.function = function;
        this.stateListener = stateListener;
    }

    State<V> state() {
        return state;
    }

    /** Reads the input and starts to compute the value again where the input has changed. */
    public void update() {
        Optional<I> newInput = inputSupplier.get();
        if (newInput.equals(input)) {
            return;
        }
        input = newInput;
        running.ifPresent(TaskQueue.SubmittedTask::cancel);
        running = Optional.empty();
        if (newInput.isEmpty()) {
            setState(new State<>(Optional.empty(), "", false));
            return;
        }
        setState(new State<>(state.value(), "", true));
        running = Optional.of(tasks.submit(new Computation(newInput.get())));
    }

    private void setState(State<V> next) {
        state = next;
        stateListener.accept(next);
    }

    /**
     * State of a derived value.
     *
     * @param value of the newest completed computation; empty before the first, after an error and without input
     * @param error message for the user where the computation failed; else empty
     * @param computing whether a newer value is being computed
     * @param measured the error where its message has lengths
     */
    public record State<V>(Optional<V> value, String error, boolean computing, Optional<UnitAwareException> measured) {

        public State(Optional<V> value, String error, boolean computing) {
            this(value, error, computing, Optional.empty());
        }

        /** Returns the error message with lengths in a unit; empty where there is none. */
        public String error(MeasureUnit unit) {
            return measured.map(e -> e.messageIn(unit)).orElse(error);
        }
    }

    private final class Computation implements BackgroundTask<State<V>> {
        private final I input;

        Computation(I input) {
            this.input = input;
        }

        @Override
        public String title() {
            return title;
        }

        @Override
        public State<V> doInBackground(ProgressListener progress) {
            progress.at("", 0);
            try {
                return new State<>(Optional.of(function.apply(input, progress)), "", false);
            } catch (UnitAwareException e) {
                return new State<>(Optional.empty(), e.getMessage(), false, Optional.of(e));
            } catch (UserFacingException e) {
                return new State<>(Optional.empty(), e.getMessage(), false);
            }
        }

        @Override
        public void succeeded(State<V> result) {
            running = Optional.empty();
            setState(result);
        }

        @Override
        public void abandoned() {
            if (running.isPresent()) { // failed rather than cancelled by update()
                running = Optional.empty();
                setState(new State<>(Optional.empty(), "", false));
            }
        }
    }
}
