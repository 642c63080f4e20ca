package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.trace.GroundTruthPhoto;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;

/**
 * A knife that lies across a pencil, rendered by a program that knows nothing of ours, with its true outline: traced as
 * one, then mended by two strokes of the brushes. The bound is that of the trace with one typed mark
 * ({@code KnifeMarkTest}).
 */
class MarkBrushTest extends MainWindowTestBase {
    /** On the pencil, beside the knife, and on the blade; pixels of the photo. */
    private static final Point PENCIL = new Point(1345, 1129);

    private static final double P95_MM = 0.18;

    @Test
    void twoStrokesTellThePencilFromTheKnife() throws IOException {
        GroundTruthPhoto known =
                GroundTruthPhoto.read(Path.of("src", "test", "resources", "clutter"), "pencil-sheet-a3");
        Photo photo = Photo.read(known.picture());
        TraceSettings settings = known.settings(known.ground());
        Trace joined = Tracer.trace(photo, settings, ProgressListener.NONE);
        double before = known.p95Mm(joined);
        Job job = OutlinedJobs.empty().withPhoto(photo).withSettings(settings).withTrace(joined);
        open(job);
        OutlineCanvas view = (OutlineCanvas) robot.finder().findByName("outline drawing");
        awaitShown(view);

        Point pencil = joined.onMidPlane(PENCIL);
        frame.toggleButton("tool Not knife").click();
        drag(view, pencil, pencil.plus(new Point(3, 3)));
        await("the first stroke", () -> !job().settings().marks().isEmpty());
        assertThat(job().settings().marks()).noneMatch(KnifeMark::isKnife);

        Job once = job();
        Point blade = once.trace().orElseThrow().silhouette().landmarks().heel().plus(new Point(30, 8));
        frame.toggleButton("tool Knife").click();
        drag(view, blade, blade.plus(new Point(25, 0)));
        await("the second stroke", () -> job().settings().marks().stream().anyMatch(KnifeMark::isKnife));
        double after = known.p95Mm(job().trace().orElseThrow());
        assertThat(after).as("95th percentile").isLessThan(P95_MM).isLessThan(before / 2);

        Path file = state.resolve("brushed.wwj");
        JobFile.write(job(), file);
        assertThat(JobFile.read(file).settings().marks())
                .isEqualTo(job().settings().marks());
        execute(() -> window.model().undo());
        assertThat(job()).isEqualTo(once);
        execute(() -> window.model().undo());
        assertThat(job()).isEqualTo(job);
    }

    private void awaitShown(OutlineCanvas view) {
        await("the outline", () -> execute(view::isShowing));
        robot.waitForIdle();
    }
}
