package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.photo.PhotoCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.trace.GroundTruthPhoto;
import weltwright.trace.capture.KnifeMark;

/**
 * A knife that lies across a pencil, rendered by a program that knows nothing of ours, with its true outline: refused,
 * then traced by a stroke on the photo as taken, and traced anew by another on the outline. The bound is that of the
 * trace with one typed mark ({@code KnifeMarkTest}).
 */
class MarkBrushTest extends MainWindowTestBase {
    /** On the pencil, beside the knife; pixels of the photo. */
    private static final Point PENCIL = new Point(1345, 1129);

    private static final double P95_MM = 0.18;

    @Test
    void aStrokeOnThePhotoAndOneOnTheOutlineTellThePencilFromTheKnife() throws IOException {
        GroundTruthPhoto known =
                GroundTruthPhoto.read(Path.of("src", "test", "resources", "clutter"), "pencil-sheet-a3");
        Job job = OutlinedJobs.empty()
                .withPhoto(Photo.read(known.picture()))
                .withSettings(known.settings(known.ground()));
        open(job);
        frame.button("onward").requireText("Find the outline").click();
        await("the refusal", () -> frame.textBox("next step").text().contains("touches the knife"));
        PhotoCanvas taken = (PhotoCanvas) robot.finder().findByName("photo drawing");
        frame.button("onward").requireText("Mark on the photo").click();
        frame.toggleButton("mark what is not knife").requireSelected();
        drag(taken, taken.toMm(PENCIL), taken.toMm(PENCIL.plus(new Point(12, 4))));
        await("the outline", () -> job().trace().isPresent());
        Job once = job();
        assertThat(once.settings().marks()).isNotEmpty().noneMatch(KnifeMark::isKnife);
        assertThat(known.p95Mm(once.trace().orElseThrow())).isLessThan(P95_MM);

        OutlineCanvas view = (OutlineCanvas) robot.finder().findByName("outline drawing");
        awaitShown(view);
        Point blade = once.trace().orElseThrow().silhouette().landmarks().heel().plus(new Point(30, 8));
        frame.toggleButton("tool Knife").click();
        drag(view, blade, blade.plus(new Point(25, 0)));
        await("the second stroke", () -> job().settings().marks().stream().anyMatch(KnifeMark::isKnife));
        assertThat(known.p95Mm(job().trace().orElseThrow()))
                .as("95th percentile")
                .isLessThan(P95_MM);

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
