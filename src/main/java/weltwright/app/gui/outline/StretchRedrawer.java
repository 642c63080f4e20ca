package weltwright.app.gui.outline;

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
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.trace.EdgeSnapper;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.outline.UncertainStretch;

/**
 * Has a stretch of the outline run along a stroke: where the photo shows the knife's edge near it, along that edge. On
 * the event thread; the following is done beside it.
 */
final class StretchRedrawer {
    private static final double STEP_MM = 0.2;

    /** Without a photo a stroke is all there is; a hand trembles by about this much. */
    private static final double DRAWN_SIGMA_MM = 1;

    /** A stroke that passes this near to the middle of an unsure stretch was drawn by somebody who saw it. */
    private static final double SEEN_MM = 2;

    private final JobModel bench;
    private final TaskQueue work;
    private final Consumer<String> said;

    /** Of the thread that works beside the window, and no other. */
    private @Nullable Ready ready;

    /** @param said told in plain words what came of it, if it is anything but a redrawn outline; else told nothing */
    StretchRedrawer(JobModel bench, TaskQueue work, Consumer<String> said) {
        this.bench = bench;
        this.work = work;
        this.said = said;
    }

    /**
     * @param stroke in the silhouette's frame, in either sense
     * @param reachMm how far from it the edge may be
     * @param over told when it is done, well or not
     */
    void along(Polyline stroke, double reachMm, Runnable over) {
        Job job = bench.job();
        Optional<Silhouette> before = job.silhouette();
        if (before.isEmpty()) {
            return;
        }
        work.start(new BackgroundTask<Redrawn>() {
            @Override
            public String title() {
                return "Following the edge";
            }

            @Override
            public Redrawn work(ProgressListener progress) {
                try {
                    return redrawn(job, before.get(), stroke, reachMm);
                } catch (UserFacingException e) {
                    return new Redrawn(Optional.empty(), List.of(), e.getMessage());
                }
            }

            @Override
            public void done(Redrawn redrawn) {
                over.run();
                take(redrawn, before);
            }

            @Override
            public void gaveUp() {
                over.run();
            }
        });
    }

    private Redrawn redrawn(Job job, Silhouette before, Polyline stroke, double reachMm) {
        Polyline rough = OutlineEdit.alongside(before.outline(), stroke);
        Polyline line = job.photo().isPresent() && job.trace().isPresent()
                ? puller(job.photo().get(), job.trace().get(), job.settings()).along(before, rough, reachMm)
                : rough.smoothed(DRAWN_SIGMA_MM, STEP_MM);
        Outline outline = OutlineEdit.redrawn(before.outline(), line);
        Polyline curve = before.outline().sampled(STEP_MM);
        List<UncertainStretch> seen = job.unsure().stream()
                .filter(unsure -> passes(line, unsure.along(curve)))
                .toList();
        return new Redrawn(Optional.of(before.withOutline(outline)), seen, "");
    }

    private EdgeSnapper puller(Photo photo, Trace trace, TraceSettings settings) {
        if (ready == null || !ready.trace().equals(trace)) {
            ready = new Ready(trace, EdgeSnapper.on(photo, trace, settings));
        }
        return ready.puller();
    }

    /** The last one asked for: strokes mostly follow one another on the same photo. */
    private record Ready(Trace trace, EdgeSnapper puller) {}

    private static boolean passes(Polyline line, Polyline stretch) {
        Point middle = stretch.at(stretch.lengthMm() / 2);
        return line.at(line.stationOf(middle)).distance(middle) < SEEN_MM;
    }

    private void take(Redrawn redrawn, Optional<Silhouette> before) {
        said.accept(redrawn.refusal());
        if (redrawn.silhouette().isEmpty()) {
            return;
        }
        if (!bench.job().silhouette().equals(before)) {
            said.accept("The outline was changed in the meantime. Draw the stretch again.");
            return;
        }
        bench.change(job -> {
            Job looked = job;
            for (UncertainStretch unsure : redrawn.seen()) {
                looked = looked.withLookedAt(unsure);
            }
            return looked.withSilhouette(redrawn.silhouette().get());
        });
    }

    /**
     * @param silhouette as redrawn; empty where that cannot be
     * @param seen unsure stretches that the stroke passed
     * @param refusal why it cannot be, or empty
     */
    private record Redrawn(Optional<Silhouette> silhouette, List<UncertainStretch> seen, String refusal) {}
}
