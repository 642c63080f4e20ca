package weltwright.window;

import java.util.Optional;
import java.util.function.UnaryOperator;
import weltwright.job.Job;
import weltwright.knife.Caliper;
import weltwright.knife.Silhouette;
import weltwright.photo.Photo;
import weltwright.trace.GroundChoice;
import weltwright.trace.Progress;
import weltwright.trace.Trace;
import weltwright.trace.TraceSettings;
import weltwright.trace.Tracer;

/**
 * Has the job's photo traced when the user asks for it, and again whenever the user then tells other things of it. What
 * the user corrected on the outline is kept as far as it fits the new one. On the event thread.
 */
final class Tracing {
    private final Bench bench;
    private final Work work;
    private Optional<Job> lastTraced = Optional.empty();
    private Optional<Question> givenUp = Optional.empty();
    private Optional<Question> asked = Optional.empty();
    private Optional<Work.Running<Trace>> running = Optional.empty();

    Tracing(Bench bench, Work work) {
        this.bench = bench;
        this.work = work;
        bench.watch(this::look);
    }

    /** Traces the photo on the bench; nothing where there is none. */
    void trace() {
        Question.of(bench.job()).ifPresent(question -> start(question, false));
    }

    boolean running() {
        return asked.isPresent();
    }

    private void look() {
        Job job = bench.job();
        Optional<Question> question = Question.of(job);
        if (asked.isPresent() && !asked.equals(question)) {
            running.ifPresent(Work.Running::cancel);
        }
        if (job.trace().isPresent()) {
            lastTraced = Optional.of(job);
        } else if (question.isPresent()
                && asked.isEmpty()
                && !givenUp.equals(question)
                && !question.get().isBeingSetByHand()
                && lastTraced.flatMap(Job::photo).equals(job.photo())) {
            start(question.get(), true);
        }
    }

    private void start(Question question, boolean partOfLastStep) {
        if (running()) {
            return;
        }
        asked = Optional.of(question);
        givenUp = Optional.empty();
        Work.Running<Trace> started = work.start(new Task<>() {
            @Override
            public String title() {
                return "Finding the outline";
            }

            @Override
            public Trace work(Progress progress) {
                return Tracer.trace(question.photo(), question.settings(), progress);
            }

            @Override
            public void done(Trace trace) {
                asked = Optional.empty();
                UnaryOperator<Job> traced = job -> job.withTrace(trace).withSilhouette(corrected(trace));
                if (partOfLastStep) {
                    bench.complete(traced);
                } else {
                    bench.change(traced);
                }
            }

            @Override
            public void gaveUp() {
                asked = Optional.empty();
                givenUp = Optional.of(question);
            }
        });
        running = Optional.of(started);
    }

    private Silhouette corrected(Trace anew) {
        return lastTraced
                .filter(before -> before.photo().equals(bench.job().photo()) && before.isCorrected())
                .map(before -> new HandWork(
                                Caliper.honoured(before.trace().orElseThrow().silhouette(), before.calipers()),
                                before.silhouette().orElseThrow())
                        .on(Caliper.honoured(anew.silhouette(), bench.job().calipers())))
                .orElse(anew.silhouette());
    }

    private record Question(Photo photo, TraceSettings settings) {
        /** Corners are pulled one after the other, and mean nothing before the last is where it belongs. */
        boolean isBeingSetByHand() {
            return settings.ground() instanceof GroundChoice.Rectangle;
        }

        static Optional<Question> of(Job job) {
            return job.photo().map(photo -> new Question(photo, job.settings()));
        }
    }
}
