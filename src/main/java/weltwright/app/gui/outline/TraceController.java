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

/**
 * Traces the job's photo in the background when the user asks for it, and again whenever the user changes the settings
 * of a traced photo. Manual corrections are transferred to the new outline as far as they fit. Used on the event
 * thread.
 */
public final class TraceController {
    private final JobModel model;
    private final TaskQueue tasks;
    private Optional<Job> lastTraced = Optional.empty();
    private Optional<Request> failedRequest = Optional.empty();
    private Optional<Request> runningRequest = Optional.empty();
    private Optional<TaskQueue.SubmittedTask<Trace>> runningTask = Optional.empty();

    public TraceController(JobModel model, TaskQueue tasks) {
        this.model = model;
        this.tasks = tasks;
        model.subscribe(this::update);
    }

    /** Starts to trace the job's photo; does nothing without a photo or while one is being traced. */
    public void trace() {
        Request.of(model.job()).ifPresent(request -> start(request, false));
    }

    public boolean isRunning() {
        return runningRequest.isPresent();
    }

    private void update() {
        Job job = model.job();
        Optional<Request> request = Request.of(job);
        if (runningRequest.isPresent() && !runningRequest.equals(request)) {
            runningTask.ifPresent(TaskQueue.SubmittedTask::cancel);
        }
        if (job.trace().isPresent()) {
            lastTraced = Optional.of(job);
        } else if (request.isPresent()
                && runningRequest.isEmpty()
                && !failedRequest.equals(request)
                && !request.get().isBeingSetByHand()
                && lastTraced.flatMap(Job::photo).equals(job.photo())) {
            start(request.get(), true);
        }
    }

    private void start(Request request, boolean partOfLastStep) {
        if (isRunning()) {
            return;
        }
        runningRequest = Optional.of(request);
        failedRequest = Optional.empty();
        TaskQueue.SubmittedTask<Trace> started = tasks.submit(new BackgroundTask<>() {
            @Override
            public String title() {
                return "Finding the outline";
            }

            @Override
            public Trace doInBackground(ProgressListener progress) {
                return Tracer.trace(request.photo(), request.settings(), progress);
            }

            @Override
            public void succeeded(Trace trace) {
                runningRequest = Optional.empty();
                UnaryOperator<Job> traced = job -> job.withTrace(trace).withSilhouette(withCorrections(trace));
                if (partOfLastStep) {
                    model.amend(traced);
                } else {
                    model.change(traced);
                }
            }

            @Override
            public void abandoned() {
                runningRequest = Optional.empty();
                failedRequest = Optional.of(request);
            }
        });
        runningTask = Optional.of(started);
    }

    private Silhouette withCorrections(Trace trace) {
        return lastTraced
                .filter(before -> before.photo().equals(model.job().photo()) && before.isCorrected())
                .map(before -> new ManualCorrection(
                                CaliperMeasure.bentTo(
                                        before.trace().orElseThrow().silhouette(), before.calipers()),
                                before.silhouette().orElseThrow())
                        .on(CaliperMeasure.bentTo(
                                trace.silhouette(), model.job().calipers())))
                .orElse(trace.silhouette());
    }

    private record Request(Photo photo, TraceSettings settings) {
        /** Corners are set one after the other; the photo is not traced again before the user asks for it. */
        boolean isBeingSetByHand() {
            return settings.ground().asRectangle().isPresent();
        }

        static Optional<Request> of(Job job) {
            return job.photo().map(photo -> new Request(photo, job.settings()));
        }
    }
}
