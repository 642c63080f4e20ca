package weltwright.app.gui.model;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.trace.ProgressListener;

/**
 * Something that follows from the job and is made anew, beside the window, whenever that which it is made from is
 * another: the pattern, the picture seen from above. On the event thread.
 *
 * @param <Q> what it is made from, with {@code equals}
 * @param <A> what is made
 */
public final class DerivedValue<Q, A> {
    private final TaskQueue work;
    private final String title;
    private final Supplier<Optional<Q>> from;
    private final Function<Q, A> maker;
    private final Consumer<State<A>> shown;
    private Optional<Q> question = Optional.empty();
    private Optional<TaskQueue.Running<?>> running = Optional.empty();
    private State<A> state = new State<>(Optional.empty(), "", false);

    /**
     * @param from that which it is made from, or empty where the job has not come that far
     * @param maker makes it; not on the event thread
     * @param shown told of each new state
     */
    public DerivedValue(
            JobModel bench,
            TaskQueue work,
            String title,
            Function<Job, Optional<Q>> from,
            Function<Q, A> maker,
            Consumer<State<A>> shown) {
        this(work, title, () -> from.apply(bench.job()), maker, shown);
        bench.watch(this::look);
    }

    /** The same from anything else; {@link #look} is to be called when that may be another. */
    public DerivedValue(
            TaskQueue work, String title, Supplier<Optional<Q>> from, Function<Q, A> maker, Consumer<State<A>> shown) {
        this.work = work;
        this.title = title;
        this.from = from;
        this.maker = maker;
        this.shown = shown;
    }

    State<A> state() {
        return state;
    }

    /** Makes it anew where it follows from something else by now. */
    public void look() {
        Optional<Q> now = from.get();
        if (now.equals(question)) {
            return;
        }
        question = now;
        running.ifPresent(TaskQueue.Running::cancel);
        running = Optional.empty();
        if (now.isEmpty()) {
            become(new State<>(Optional.empty(), "", false));
            return;
        }
        become(new State<>(state.made(), "", true));
        running = Optional.of(work.start(new Make(now.get())));
    }

    private void become(State<A> next) {
        state = next;
        shown.accept(next);
    }

    /**
     * What there is of a derived value at a moment.
     *
     * @param made the newest that there is; while another is being made, the one before it
     * @param trouble why there is none, for the user; or empty
     * @param inWork whether another is being made
     */
    public record State<A>(Optional<A> made, String trouble, boolean inWork) {}

    /** What came of it: that which was asked for, or why it cannot be. */
    private final class Make implements BackgroundTask<State<A>> {
        private final Q question;

        Make(Q question) {
            this.question = question;
        }

        @Override
        public String title() {
            return title;
        }

        @Override
        public State<A> work(ProgressListener progress) {
            progress.at("", 0);
            try {
                return new State<>(Optional.of(maker.apply(question)), "", false);
            } catch (UserFacingException e) {
                return new State<>(Optional.empty(), e.getMessage(), false);
            }
        }

        @Override
        public void done(State<A> result) {
            running = Optional.empty();
            become(result);
        }

        @Override
        public void gaveUp() {
            if (running.isPresent()) { // failed, not overtaken by a newer one
                running = Optional.empty();
                become(new State<>(Optional.empty(), "", false));
            }
        }
    }
}
