package weltwright.app.gui.outline;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.PhotoAssessor;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.ManualCorrection;
import weltwright.message.Messages;
import weltwright.trace.LocatedKnife;
import weltwright.trace.ProgressListener;
import weltwright.trace.RejectedOutlineException;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;

/**
 * Traces the job's photo in the background when the user asks for it, and again whenever the user changes the settings
 * of a traced photo, or marks what is knife in one that could not be traced. Manual corrections are transferred to the
 * new outline as far as they fit. Used on the event thread.
 */
public final class TraceController {
    private static final Messages TEXTS = Messages.of(TraceController.class);

    private final JobModel model;
    private final TaskQueue tasks;
    private final PhotoAssessor assessor = new PhotoAssessor();
    private Optional<Job> lastTraced = Optional.empty();
    private Optional<Failure> failure = Optional.empty();
    private Optional<Request> runningRequest = Optional.empty();
    private Optional<TaskQueue.SubmittedTask<Result>> runningTask = Optional.empty();
    private Object openedJob;

    public TraceController(JobModel model, TaskQueue tasks) {
        this.model = model;
        this.tasks = tasks;
        openedJob = model.openedJob();
        model.subscribe(this::update);
    }

    /**
     * Starts to trace the job's photo; does nothing without a photo, without the thicknesses of handle and spine, or
     * while one is being traced.
     */
    public void trace() {
        Request.of(model.job()).ifPresent(request -> start(request, false));
    }

    /** Returns that from which traces take what they need not find again; used by tasks of the queue alone. */
    public PhotoAssessor assessor() {
        return assessor;
    }

    public boolean isRunning() {
        return runningRequest.isPresent();
    }

    /** Returns why the present photo could not be traced with the present settings; empty where it was not tried. */
    public String error() {
        return currentFailure().map(Failure::error).orElse("");
    }

    private Optional<Failure> currentFailure() {
        return failure.filter(failed -> Request.of(model.job()).equals(Optional.of(failed.request())));
    }

    /**
     * Returns points along the closed line, in pixels, that was taken for the outline of the present photo with the
     * present settings; none where there is no such line.
     */
    public List<Point> rejectedOutline() {
        return currentFailure().map(Failure::outlinePx).orElse(List.of());
    }

    /** Forgets the corrections of the outline so far: the photo was opened anew. */
    public void forgetCorrections() {
        lastTraced = Optional.empty();
    }

    private void update() {
        Job job = model.job();
        if (!model.openedJob().equals(openedJob)) {
            openedJob = model.openedJob();
            forgetCorrections();
        }
        Optional<Request> request = Request.of(job);
        if (runningRequest.isPresent() && !runningRequest.equals(request)) {
            runningTask.ifPresent(TaskQueue.SubmittedTask::cancel);
        }
        if (job.trace().isPresent()) {
            lastTraced = Optional.of(job);
        } else if (request.isPresent()
                && runningRequest.isEmpty()
                && !failure.map(Failure::request).equals(request)
                && !request.get().isBeingSetByHand()
                && (lastTraced.flatMap(Job::photo).equals(job.photo())
                        || failure.filter(failed -> failed.isMended(request.get()))
                                .isPresent())) {
            start(request.get(), true);
        }
    }

    private void start(Request request, boolean partOfLastStep) {
        if (isRunning()) {
            return;
        }
        runningRequest = Optional.of(request);
        failure = Optional.empty();
        TaskQueue.SubmittedTask<Result> started = tasks.submit(new BackgroundTask<>() {
            @Override
            public String title() {
                return TEXTS.text("trace-controller.finding-the-outline");
            }

            @Override
            public Result doInBackground(ProgressListener progress) {
                progress.at("", 0); // the bar shows while the photo is assessed
                try {
                    Optional<LocatedKnife> located = assessor.knife(request.photo(), request.settings());
                    return new Result(
                            Optional.of(Tracer.trace(request.photo(), request.settings(), located, progress)),
                            "",
                            List.of());
                } catch (RejectedOutlineException e) {
                    return new Result(Optional.empty(), e.getMessage(), e.outlinePx());
                } catch (UserFacingException e) {
                    return new Result(Optional.empty(), e.getMessage(), List.of());
                }
            }

            @Override
            public void succeeded(Result result) {
                runningRequest = Optional.empty();
                if (result.trace().isEmpty()) {
                    failure = Optional.of(new Failure(request, result.error(), result.rejectedOutlinePx()));
                    return;
                }
                Trace trace = result.trace().get();
                UnaryOperator<Job> traced = job -> withCorrections(lastTraced, job.withTrace(trace));
                if (partOfLastStep) {
                    model.amend(traced);
                } else {
                    model.change(traced);
                }
            }

            @Override
            public void abandoned() {
                runningRequest = Optional.empty();
                failure = Optional.of(new Failure(request, "", List.of()));
            }
        });
        runningTask = Optional.of(started);
    }

    /**
     * Returns a job that was traced anew with the corrections that were made to the last trace of the same photo.
     *
     * @param lastTraced a job with a trace and perhaps with corrections of it
     */
    static Job withCorrections(Optional<Job> lastTraced, Job anew) {
        return lastTraced
                .filter(before -> before.photo().equals(anew.photo()) && before.isCorrected())
                .map(before -> anew.withSilhouette(new ManualCorrection(
                                before.proposal().orElseThrow(),
                                before.silhouette().orElseThrow())
                        .on(anew.silhouette().orElseThrow())))
                .orElse(anew);
    }

    /**
     * @param trace empty where the photo could not be traced
     * @param error why, or empty
     * @param rejectedOutlinePx points along the line that was taken for the outline, or none
     */
    private record Result(Optional<Trace> trace, String error, List<Point> rejectedOutlinePx) {}

    /**
     * A trace that was not done.
     *
     * @param error why the photo could not be traced; empty where it was stopped
     * @param outlinePx points along the line that was taken for the outline, or none
     */
    private record Failure(Request request, String error, List<Point> outlinePx) {
        /** Returns whether the user has marked anew what is knife in the photo. */
        boolean isMended(Request anew) {
            return anew.photo().equals(request.photo())
                    && !anew.settings().marks().equals(request.settings().marks());
        }
    }

    private record Request(Photo photo, TraceSettings settings) {
        /** Corners are set one after the other; the photo is not traced again before the user asks for it. */
        boolean isBeingSetByHand() {
            return settings.ground().asRectangle().isPresent();
        }

        static Optional<Request> of(Job job) {
            return job.photo()
                    .filter(photo -> job.settings().isMeasured())
                    .map(photo -> new Request(photo, job.settings()));
        }
    }
}
