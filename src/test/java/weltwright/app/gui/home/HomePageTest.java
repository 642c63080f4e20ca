package weltwright.app.gui.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Frame;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.JList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.RecentJobs;
import weltwright.job.ShelvedJob;

/** Opens jobs and samples from the start page. */
class HomePageTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    private Path save(String name, Job job) {
        Path file = folder.resolve(name + JobFile.EXTENSION);
        JobFile.write(job, file);
        return file;
    }

    private List<String> shownCustomers() {
        return execute(() -> {
            JList<?> cards = (JList<?>) robot.finder().findByName("job cards");
            List<String> names = new ArrayList<>();
            for (int i = 0; i < cards.getModel().getSize(); i++) {
                names.add(((ShelvedJob) cards.getModel().getElementAt(i)).job().customer());
            }
            return names;
        });
    }

    private static Job of(String customer, Optional<LocalDate> due, Optional<LocalDate> finished) {
        return OutlinedJobs.outlined()
                .withOrder(customer, "knife", due, "brown thread")
                .withFinished(finished);
    }

    @Test
    void showsAllJobsOfTheFoldersByDueDateAndFindsThemByWords() {
        LocalDate day = LocalDate.of(2027, 5, 1);
        save("a", of("Late", Optional.of(day.plusDays(9)), Optional.empty()));
        save("b", of("Soon", Optional.of(day), Optional.empty()));
        save("c", of("Done", Optional.of(day), Optional.of(day)));
        Path known = save("d", of("Undated", Optional.empty(), Optional.empty()));
        new RecentJobs(state.resolve("recent-jobs.json")).put(known, "SHEATH");
        showHome();
        await("the jobs", () -> shownCustomers().equals(List.of("Soon", "Late", "Undated", "Done")));

        frame.textBox("search jobs").enterText("LATE brown");
        await("those found", () -> shownCustomers().equals(List.of("Late")));
        frame.textBox("search jobs").deleteText().enterText("nobody");
        await("none", () -> shownCustomers().isEmpty());
        assertThat(frame.textBox("no jobs").text()).contains("nobody");
    }

    private void showHome() {
        frame.menuItemWithPath("File", "Start page").click();
        robot.waitForIdle();
    }

    @Test
    void opensAJobWhereItWasLeft() {
        Path file = save("a", of("Anouk", Optional.empty(), Optional.empty()));
        drop(file);
        await("the job", () -> job().customer().equals("Anouk"));
        frame.toggleButton("stage Paper").click();
        showHome();
        await("the card", () -> shownCustomers().equals(List.of("Anouk")));
        execute(() -> window.model().open(OutlinedJobs.empty(), Optional.empty()));
        frame.toggleButton("stage Knife").requireSelected();
        showHome();
        robot.focus(robot.finder().findByName("job cards"));
        press(KeyEvent.VK_DOWN);
        press(KeyEvent.VK_ENTER);
        await("the job again", () -> job().customer().equals("Anouk"));
        frame.toggleButton("stage Paper").requireSelected();
    }

    @Test
    void aJobIsFinishedByItsTitle() {
        open(OutlinedJobs.outlined());
        frame.button("job title").click();
        frame.checkBox("finished").click();
        assertThat(job().finished()).isPresent();
        frame.checkBox("finished").click();
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void opensASecondJobInAWindowOfItsOwnAndTheSameOneOnlyOnce() {
        Path first = save("a", of("Anouk", Optional.empty(), Optional.empty()));
        Path second = save("b", of("Tomas", Optional.empty(), Optional.empty()));
        drop(first);
        await("the job", () -> job().customer().equals("Anouk"));
        int before = windows();
        drop(second);
        await("another window", () -> windows() == before + 1);
        assertThat(job().customer()).isEqualTo("Anouk");
        drop(second);
        drop(first);
        robot.waitForIdle();
        assertThat(windows()).isEqualTo(before + 1);
    }

    private int windows() {
        return execute(() -> (int)
                Arrays.stream(Frame.getFrames()).filter(Component::isShowing).count());
    }

    @Test
    void beginsASampleWithPhotoAndMeasures() {
        frame.button("sample.drop-point").click();
        await("the sample", () -> job().photo().isPresent());
        assertThat(job().settings().isMeasured()).isTrue();
        frame.toggleButton("stage Knife").requireVisible();
        frame.button("onward").requireText("Find the outline");
    }

    @Test
    void forgetsAJobWhoseFileIsGone() throws Exception {
        Path file = save("a", of("Anouk", Optional.empty(), Optional.empty()));
        new RecentJobs(state.resolve("recent-jobs.json")).put(file, "SHEATH");
        Files.delete(file);
        showHome();
        await("no card", () -> shownCustomers().isEmpty());
        assertThat(frame.textBox("no jobs").text()).contains("No jobs yet");
    }

    /** Else the start page would come as late as they. */
    @Test
    void formsAndDrawingsAreMadeWithTheFirstJob() {
        assertThat(robot.finder().findAll(found -> found instanceof FormPanel || found instanceof DrawingCanvas))
                .isEmpty();
        open(OutlinedJobs.outlined());
        assertThat(robot.finder().findAll(found -> found instanceof FormPanel || found instanceof DrawingCanvas))
                .isNotEmpty();
    }
}
