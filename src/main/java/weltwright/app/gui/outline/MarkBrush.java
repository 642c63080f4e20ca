package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.app.gui.drawing.MarkStroke;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.PhotoAssessor;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.message.Messages;
import weltwright.trace.LocatedKnife;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;

/**
 * Two brushes that paint over the photo what is knife and what is not. Each stroke becomes marks of the trace, and the
 * photo is traced anew with them in the background; the outline stays until then. Marks, trace and outline change by
 * one undo step. Used on the event thread. Points are in mm in the silhouette frame.
 */
final class MarkBrush {
    private static final Messages TEXTS = Messages.of(MarkBrush.class);

    /** Distance of the marks along a stroke; each tells of the ground within a mm around it. Chosen by eye. */
    private static final double SPACING_MM = 4;

    private final JobModel model;
    private final TaskQueue tasks;
    private final PhotoAssessor assessor;
    private final Consumer<String> messageListener;
    private final MarkStroke stroke = new MarkStroke();
    private Optional<Pending> pending = Optional.empty();
    private Optional<TaskQueue.SubmittedTask<Result>> running = Optional.empty();

    /**
     * Marks that the job does not have yet.
     *
     * @param before the job to which they were added
     */
    private record Pending(Job before, List<KnifeMark> marks) {}

    /** @param error why there is no trace; else empty */
    private record Result(Optional<Trace> trace, String error) {}

    /**
     * @param assessor from which a trace takes what does not depend on the marks
     * @param messageListener receives why the outline did not follow, or the empty text where it did
     */
    MarkBrush(JobModel model, TaskQueue tasks, PhotoAssessor assessor, Consumer<String> messageListener) {
        this.model = model;
        this.tasks = tasks;
        this.assessor = assessor;
        this.messageListener = messageListener;
    }

    /** Returns whether there is a traced photo to paint on. */
    boolean isAvailable() {
        return model.job().photo().isPresent() && model.job().trace().isPresent();
    }

    MarkStroke stroke() {
        return stroke;
    }

    /** Ends the stroke, which may be one point, and traces the photo with its marks. */
    void finish() {
        Trace trace = model.job().trace().orElseThrow();
        List<KnifeMark> marks = new ArrayList<>(marks());
        stroke.finish(SPACING_MM).forEach(p -> marks.add(new KnifeMark(pixel(trace, p), stroke.isKnife())));
        traceWith(marks);
    }

    /** Takes all marks away and traces the photo without them. */
    void removeAll() {
        if (isAvailable() && !marks().isEmpty()) {
            traceWith(List.of());
        }
    }

    /** Returns the marks of the job with those that are being traced. */
    private List<KnifeMark> marks() {
        return pending.filter(p -> p.before().equals(model.job()))
                .map(Pending::marks)
                .orElseGet(() -> model.job().settings().marks());
    }

    /** Returns the pixel of the photo that shows a point of the knife's mid-plane. */
    private static Point pixel(Trace trace, Point mm) {
        return trace.view().pixel(trace.midPlane().pointAbove(trace.onGround().apply(mm)));
    }

    private void traceWith(List<KnifeMark> marks) {
        Job before = model.job();
        Photo photo = before.photo().orElseThrow();
        TraceSettings settings = before.settings().withMarks(marks);
        running.ifPresent(TaskQueue.SubmittedTask::cancel);
        pending = Optional.of(new Pending(before, List.copyOf(marks)));
        messageListener.accept("");
        running = Optional.of(tasks.submit(new BackgroundTask<Result>() {
            @Override
            public String title() {
                return TEXTS.text("brush.task");
            }

            @Override
            public Result doInBackground(ProgressListener progress) {
                try {
                    progress.at("", 0); // the bar shows where the photo is assessed
                    Optional<LocatedKnife> located = assessor.knife(photo, settings);
                    return new Result(Optional.of(Tracer.trace(photo, settings, located, progress)), "");
                } catch (UserFacingException e) {
                    return new Result(Optional.empty(), e.getMessage());
                }
            }

            @Override
            public void succeeded(Result result) {
                running = Optional.empty();
                pending = Optional.empty();
                apply(result, before, settings);
            }

            @Override
            public void abandoned() {
                if (running.isPresent()
                        && pending.filter(p -> p.marks().equals(marks)).isPresent()) {
                    pending = Optional.empty(); // stopped by the user rather than overtaken by another stroke
                }
                messageListener.accept("");
            }
        }));
    }

    private void apply(Result result, Job before, TraceSettings settings) {
        if (result.trace().isEmpty()) {
            messageListener.accept(TEXTS.text("brush.refused", result.error()));
        } else if (!model.job().equals(before)) {
            messageListener.accept(TEXTS.text("brush.overtaken"));
        } else {
            Trace trace = result.trace().get();
            model.change(job -> TraceController.withCorrections(
                    Optional.of(before), job.withSettings(settings).withTrace(trace)));
        }
    }

    /** Paints the marks of the job, those that are being traced, and the stroke that is being drawn. */
    void paint(Graphics2D g, Viewport viewport) {
        model.job()
                .trace()
                .ifPresent(trace -> marks().forEach(mark ->
                        MarkStroke.paintMark(g, viewport, trace.onMidPlane(mark.pixel()), mark.isKnife())));
        stroke.paint(g, viewport);
    }
}
