package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.MovableLandmark;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;

/** On the sample photo, without a window. */
class TraceControllerTest {
    private static final Photo PHOTO = Photo.read(Path.of("sample-images", "drop-point.jpg"));

    private final List<String> messages = new ArrayList<>();
    private TaskQueue tasks;
    private JobModel model;
    private TraceController tracing;

    @BeforeEach
    void openPhoto() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            tasks = new TaskQueue(messages::add);
            model = new JobModel(OutlinedJobs.measured().withPhoto(PHOTO));
            tracing = new TraceController(model, tasks);
        });
    }

    @AfterEach
    void close() throws Exception {
        SwingUtilities.invokeAndWait(tasks::close);
    }

    @Test
    void doesNotTraceBeforeTheUserAsks() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            model.change(job -> job.withSettings(thicker(job)));
            assertThat(tracing.isRunning()).isFalse();
        });
    }

    @Test
    void doesNotTraceAgainAfterCancelling() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            tracing.trace();
            assertThat(tracing.isRunning()).isTrue();
            tasks.pending().get(0).cancel();
            model.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.7)));
            assertThat(tracing.isRunning()).isFalse();
            assertThat(model.job().trace()).isEmpty();
        });
        assertThat(messages).isEmpty();
    }

    @Test
    void keepsCorrectionsWhenTracedAgain() throws Exception {
        Job traced = afterTrace(tracing::trace);
        Point butt = traced.silhouette().orElseThrow().landmarks().butt().plus(new Point(4, 10));
        Job anew = afterTrace(() -> {
            model.change(job -> job.withSilhouette(
                            MovableLandmark.BUTT.pulled(job.silhouette().orElseThrow(), butt))
                    .withSpine(!job.silhouette().orElseThrow().spineOnLeft()));
            model.change(job -> job.withSettings(thicker(job)));
        });
        var proposed = anew.proposal().orElseThrow();
        var kept = anew.silhouette().orElseThrow();
        assertThat(kept.outline())
                .isEqualTo(proposed.outline())
                .isNotEqualTo(traced.silhouette().get().outline());
        assertThat(kept.spineOnLeft())
                .isEqualTo(proposed.spineOnLeft())
                .isNotEqualTo(anew.trace().orElseThrow().silhouette().spineOnLeft());
        assertThat(kept.landmarks().tip()).isEqualTo(proposed.landmarks().tip());
        assertThat(kept.landmarks().butt().distance(butt)).isCloseTo(0, within(6.0));
        assertThat(kept.landmarks().butt()).isNotEqualTo(proposed.landmarks().butt());
        // The measures and the outline that follows from them are one step.
        SwingUtilities.invokeAndWait(model::undo);
        assertThat(model.job().trace()).isEqualTo(traced.trace());
        assertThat(model.job().settings()).isEqualTo(traced.settings());
    }

    @Test
    void doesNotTraceWhileCornersAreSet() throws Exception {
        afterTrace(tracing::trace);
        SwingUtilities.invokeAndWait(() -> {
            model.change(job -> job.withSettings(job.settings()
                    .withGround(new GroundChoice.Rectangle(
                            297,
                            210,
                            List.of(new Point(9, 9), new Point(900, 9), new Point(900, 600), new Point(9, 600))))));
            assertThat(model.job().trace()).isEmpty();
            assertThat(tracing.isRunning()).isFalse();
            tracing.trace();
            assertThat(tracing.isRunning()).isTrue();
        });
    }

    /** The job once it has a trace again. */
    private Job afterTrace(Runnable what) throws Exception {
        CompletableFuture<Job> traced = new CompletableFuture<>();
        SwingUtilities.invokeAndWait(() -> {
            what.run();
            assertThat(tracing.isRunning()).isTrue();
            model.subscribe(() -> {
                if (model.job().trace().isPresent()) {
                    traced.complete(model.job());
                }
            });
        });
        return traced.get(2, TimeUnit.MINUTES);
    }

    private static TraceSettings thicker(Job job) {
        TraceSettings s = job.settings();
        return new TraceSettings(
                s.measuredHandleMm() + 4, s.measuredSpineMm(), s.tipDropMm(), s.focal35mm(), s.sheetScale());
    }
}
