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
    private TaskQueue work;
    private JobModel bench;
    private TraceController tracing;

    @BeforeEach
    void photoOnTheBench() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            work = new TaskQueue(messages::add);
            bench = new JobModel(OutlinedJobs.empty().withPhoto(PHOTO));
            tracing = new TraceController(bench, work);
        });
    }

    @AfterEach
    void close() throws Exception {
        SwingUtilities.invokeAndWait(work::close);
    }

    @Test
    void aPhotoIsNotTracedBeforeTheUserAsks() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            bench.change(job -> job.withSettings(thicker(job)));
            assertThat(tracing.running()).isFalse();
        });
    }

    @Test
    void stoppedItIsNotTriedAgainUntilTheUserAsks() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            tracing.trace();
            assertThat(tracing.running()).isTrue();
            work.waiting().get(0).cancel();
            bench.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.7)));
            assertThat(tracing.running()).isFalse();
            assertThat(bench.job().trace()).isEmpty();
        });
        assertThat(messages).isEmpty();
    }

    @Test
    void whatWasCorrectedByHandIsKeptWhenItIsTracedAnew() throws Exception {
        Job traced = afterTrace(tracing::trace);
        Point butt = traced.silhouette().orElseThrow().landmarks().butt().plus(new Point(4, 10));
        Job anew = afterTrace(() -> {
            bench.change(job -> job.withSilhouette(
                    MovableLandmark.BUTT.pulled(job.silhouette().orElseThrow().withOtherSide(), butt)));
            bench.change(job -> job.withSettings(thicker(job)));
        });
        var proposed = anew.trace().orElseThrow().silhouette();
        var kept = anew.silhouette().orElseThrow();
        assertThat(kept.outline())
                .isEqualTo(proposed.outline())
                .isNotEqualTo(traced.silhouette().get().outline());
        assertThat(kept.spineOnLeft()).isNotEqualTo(proposed.spineOnLeft());
        assertThat(kept.landmarks().tip()).isEqualTo(proposed.landmarks().tip());
        assertThat(kept.landmarks().butt().distance(butt)).isCloseTo(0, within(6.0));
        assertThat(kept.landmarks().butt()).isNotEqualTo(proposed.landmarks().butt());
        // The measures and the outline that follows from them are one step.
        SwingUtilities.invokeAndWait(bench::undo);
        assertThat(bench.job().trace()).isEqualTo(traced.trace());
        assertThat(bench.job().settings()).isEqualTo(traced.settings());
    }

    @Test
    void cornersBeingSetAreNotTracedBeforeTheUserAsks() throws Exception {
        afterTrace(tracing::trace);
        SwingUtilities.invokeAndWait(() -> {
            bench.change(job -> job.withSettings(job.settings()
                    .withGround(new GroundChoice.Rectangle(
                            297,
                            210,
                            List.of(new Point(9, 9), new Point(900, 9), new Point(900, 600), new Point(9, 600))))));
            assertThat(bench.job().trace()).isEmpty();
            assertThat(tracing.running()).isFalse();
            tracing.trace();
            assertThat(tracing.running()).isTrue();
        });
    }

    /** The job once it has a trace again. */
    private Job afterTrace(Runnable what) throws Exception {
        CompletableFuture<Job> traced = new CompletableFuture<>();
        SwingUtilities.invokeAndWait(() -> {
            what.run();
            assertThat(tracing.running()).isTrue();
            bench.watch(() -> {
                if (bench.job().trace().isPresent()) {
                    traced.complete(bench.job());
                }
            });
        });
        return traced.get(2, TimeUnit.MINUTES);
    }

    private static TraceSettings thicker(Job job) {
        TraceSettings s = job.settings();
        return new TraceSettings(
                s.handleThicknessMm() + 4, s.spineThicknessMm(), s.tipDropMm(), s.focal35mm(), s.sheetScale());
    }
}
