package weltwright.app.gui.outline;

import java.util.Optional;
import java.util.function.UnaryOperator;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.ManualCorrection;
import weltwright.knife.Silhouette;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;

/**
 * Has the job's photo traced when the user asks for it, and again whenever the user then tells other things of it. What
 * the user corrected on the outline is kept as far as it fits the new one. On the event thread.
 */
public final class TraceController {
    private final JobModel bench;
    private final TaskQueue work;
    private Optional<Job> lastTraced = Optional.empty();
    private Optional<Question> givenUp = Optional.empty();
    private Optional<Question> asked = Optional.empty();
    private Optional<TaskQueue.Running<Trace>> running = Optional.empty();

    public TraceController(JobModel bench, TaskQueue work) {
        this.bench = bench;
        this.work = work;
        bench.watch(this::look);
    }

    /** Traces the photo on the bench; nothing where there is none. */
    public void trace() {
        Question.of(bench.job()).ifPresent(question -> start(question, false));
    }

    public boolean running() {
        return asked.isPresent();
    }

    private void look() {
        Job job = bench.job();
        Optional<Question> question = Question.of(job);
        if (asked.isPresent() && !asked.equals(question)) {
            running.ifPresent(TaskQueue.Running::cancel);
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
        TaskQueue.Running<Trace> started = work.start(new BackgroundTask<>() {
            @Override
            public String title() {
                return "Finding the outline";
            }

            @Override
            public Trace work(ProgressListener progress) {
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
                .map(before -> new ManualCorrection(
                                CaliperMeasure.honoured(
                                        before.trace().orElseThrow().silhouette(), before.calipers()),
                                before.silhouette().orElseThrow())
                        .on(CaliperMeasure.honoured(
                                anew.silhouette(), bench.job().calipers())))
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
