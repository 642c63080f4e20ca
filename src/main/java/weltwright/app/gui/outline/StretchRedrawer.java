package weltwright.app.gui.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;
import weltwright.geometry.curve.ReversalFinder;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.EdgeSnapper;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.outline.UncertainStretch;

/**
 * Redraws a stretch of the outline along a stroke, in the background: along the knife's edge where there is a traced
 * photo, else along the smoothed stroke. Uncertain stretches that the stroke passes count as reviewed. Used on the
 * event thread.
 */
final class StretchRedrawer {
    private static final Messages TEXTS = Messages.of(StretchRedrawer.class);

    private static final double STEP_MM = 0.2;

    /** Standard deviation by which a stroke is smoothed where there is no photo; chosen by eye. */
    private static final double DRAWN_SIGMA_MM = 1;

    /** A stroke that passes the middle of an uncertain stretch within this distance reviews it; chosen by eye. */
    private static final double REVIEW_DISTANCE_MM = 2;

    // Distances by which a place of one outline is known in another; chosen by eye.
    private static final double TIP_MM = 3;
    private static final double SAME_PLACE_MM = 2;
    private static final double FOREMOST_MM = 0.3;

    private final JobModel model;
    private final TaskQueue tasks;
    private final Consumer<String> messageListener;

    /** Used on the background thread only. */
    private @Nullable Ready cachedSnapper;

    /** @param messageListener receives why the outline was not redrawn, or the empty text where it was */
    StretchRedrawer(JobModel model, TaskQueue tasks, Consumer<String> messageListener) {
        this.model = model;
        this.tasks = tasks;
        this.messageListener = messageListener;
    }

    /**
     * Starts to redraw the outline.
     *
     * @param stroke in the silhouette frame, in either direction
     * @param maxDistanceMm between stroke and edge
     * @param onFinished called when it is done, failed or cancelled
     */
    void redrawAlong(Polyline stroke, double maxDistanceMm, Runnable onFinished) {
        Job job = model.job();
        Optional<Silhouette> before = job.silhouette();
        if (before.isEmpty()) {
            return;
        }
        tasks.submit(new BackgroundTask<Redrawn>() {
            @Override
            public String title() {
                return TEXTS.text("stretch-redrawer.following-the-edge");
            }

            @Override
            public Redrawn doInBackground(ProgressListener progress) {
                try {
                    return redrawn(job, before.get(), stroke, maxDistanceMm);
                } catch (UserFacingException e) {
                    return new Redrawn(Optional.empty(), List.of(), e.getMessage());
                }
            }

            @Override
            public void succeeded(Redrawn redrawn) {
                onFinished.run();
                apply(redrawn, before);
            }

            @Override
            public void abandoned() {
                onFinished.run();
            }
        });
    }

    private Redrawn redrawn(Job job, Silhouette before, Polyline stroke, double maxDistanceMm) {
        Polyline rough = OutlineEdit.oriented(before.outline(), stroke);
        Polyline line = job.photo().isPresent() && job.trace().isPresent()
                ? snapper(job.photo().get(), job.toldTrace().get(), job.settings())
                        .snap(before, rough, maxDistanceMm)
                : rough.smoothed(DRAWN_SIGMA_MM, STEP_MM);
        Outline outline = OutlineEdit.redrawn(before.outline(), line);
        checkNoReversal(before, outline);
        Polyline curve = before.outline().sampled(STEP_MM);
        List<UncertainStretch> reviewed = job.unsure().stream()
                .filter(uncertain -> passes(line, uncertain.along(curve)))
                .toList();
        return new Redrawn(Optional.of(before.withOutline(outline)), reviewed, "");
    }

    /**
     * Refuses a redrawn outline that turns back on itself at a place where it did not before, such as a spike where the
     * line followed something else than the edge. Each place of before accounts for one place of now. Besides these
     * only the tip may turn back so, where it was moved or made sharp: then it is the foremost point of the knife, and
     * the only such place near the tip of before.
     */
    static void checkNoReversal(Silhouette before, Outline redrawn) {
        List<Point> found = new ArrayList<>(ReversalFinder.find(redrawn));
        Point tip = before.landmarks().tip();
        long nearTip =
                found.stream().filter(apex -> apex.distance(tip) <= TIP_MM).count();
        for (Point known : ReversalFinder.find(before.outline())) {
            found.stream()
                    .min(Comparator.comparingDouble(known::distance))
                    .filter(apex -> apex.distance(known) < SAME_PLACE_MM)
                    .ifPresent(found::remove);
        }
        double foremost = redrawn.sampled(STEP_MM).points().stream()
                .mapToDouble(Point::x)
                .max()
                .orElseThrow();
        boolean reverses = found.stream()
                .anyMatch(apex -> apex.distance(tip) > TIP_MM || nearTip > 1 || apex.x() < foremost - FOREMOST_MM);
        if (reverses) {
            throw new UserFacingException(
                    TEXTS.text("stretch-redrawer.the-line-would-turn-back"),
                    TEXTS.text("stretch-redrawer.draw-it-again-along-the"));
        }
    }

    private EdgeSnapper snapper(Photo photo, Trace trace, TraceSettings settings) {
        if (cachedSnapper == null || !cachedSnapper.trace().equals(trace)) {
            cachedSnapper = new Ready(trace, EdgeSnapper.on(photo, trace, settings));
        }
        return cachedSnapper.snapper();
    }

    /** The snapper of the last trace; most strokes follow one another on one photo. */
    private record Ready(Trace trace, EdgeSnapper snapper) {}

    private static boolean passes(Polyline line, Polyline stretch) {
        Point middle = stretch.at(stretch.lengthMm() / 2);
        return line.at(line.stationOf(middle)).distance(middle) < REVIEW_DISTANCE_MM;
    }

    private void apply(Redrawn redrawn, Optional<Silhouette> before) {
        messageListener.accept(redrawn.error());
        if (redrawn.silhouette().isEmpty()) {
            return;
        }
        if (!model.job().silhouette().equals(before)) {
            messageListener.accept(TEXTS.text("stretch-redrawer.the-outline-was-changed-in"));
            return;
        }
        model.change(job -> {
            Job reviewed = job;
            for (UncertainStretch uncertain : redrawn.reviewed()) {
                reviewed = reviewed.withReviewed(uncertain);
            }
            return reviewed.withSilhouette(redrawn.silhouette().get());
        });
    }

    /**
     * @param silhouette with the redrawn stretch; empty where that failed
     * @param reviewed uncertain stretches that the stroke passed
     * @param error why it failed, or empty
     */
    private record Redrawn(Optional<Silhouette> silhouette, List<UncertainStretch> reviewed, String error) {}
}
