package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.nio.file.Path;
import javax.swing.JFrame;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.outline.OutlineCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.trace.Trace;

/** Nothing of the last job is left in the next. */
class NewJobTest extends MainWindowTestBase {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg");

    @Test
    void handWorkStaysWithItsJobWhereTheSamePhotoIsOpenedAgain() {
        open(OutlinedJobs.measured().withPhoto(Photo.read(PHOTO)));
        frame.button("onward").requireText("Find the outline").click();
        await("the outline", () -> job().trace().isPresent());
        awaitNextStep("To the sheath");
        OutlineCanvas canvas = (OutlineCanvas) robot.finder().findByName("outline drawing");
        Point heel = job().silhouette().orElseThrow().landmarks().heel();
        drag(canvas, heel, heel.plus(new Point(8, 0)));
        assertThat(job().isCorrected()).isTrue();

        drop(PHOTO);
        await("the photo opened again", () -> job().trace().isEmpty());
        awaitNextStep("Find the outline");
        frame.button("onward").click();
        await("the outline again", () -> job().trace().isPresent());
        assertThat(job().silhouette()).isEqualTo(job().trace().map(Trace::silhouette));

        drag(canvas, heel, heel.plus(new Point(8, 0)));
        assertThat(job().isCorrected()).isTrue();
        open(OutlinedJobs.empty());
        drop(PHOTO);
        await("the photo", () -> job().photo().isPresent());
        type("handle thickness", "19");
        type("spine thickness", "3.5");
        await("the outline in the new job", () -> job().trace().isPresent());
        assertThat(job().silhouette()).isEqualTo(job().trace().map(Trace::silhouette));
    }

    @Test
    void theKindOfGroundAndWhatWasHalfTypedStayWithTheirJob() {
        open(OutlinedJobs.outlined());
        frame.comboBox("ground").selectItem("Ruled mat or paper");
        frame.textBox("place of the width, from the tip").deleteText().enterText("40\n");
        frame.textBox("handle thickness").deleteText().enterText("2");
        frame.comboBox("ground").requireSelection("Ruled mat or paper");
        open(OutlinedJobs.empty());
        frame.comboBox("ground").requireSelection("Found in photo");
        frame.textBox("handle thickness").requireText("");
        frame.textBox("place of the width, from the tip").requireText("");
    }

    /** Each window opens lower and to the right of the last; the screen ends somewhere. */
    @Test
    void windowsOfNewJobsStayOnTheScreen() {
        for (int i = 0; i < 6; i++) {
            MainWindow last = window;
            boolean onScreen = execute(() -> {
                window = application.newWindow();
                window.showBeside(last.frame());
                JFrame shown = window.frame();
                return shown.getGraphicsConfiguration().getBounds().contains(shown.getBounds());
            });
            assertThat(onScreen).as("window %d", i).isTrue();
        }
    }
}
