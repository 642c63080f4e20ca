package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.EditingProcess;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.AbandonedJob;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.OpenJobs;

/** Unsaved work survives a kill of the program. */
class RecoveryTest extends MainWindowTestBase {
    /** What may be lost. */
    private static final long LOST_MS = 2000;

    private static final int EDITS_BEFORE_THE_KILL = 20;

    @TempDir
    private Path folder;

    @Test
    void losesAtMostTwoSecondsOfAJobThatWasNeverSaved() throws Exception {
        Killed killed = editAndKill(Optional.empty());
        restoreAndCheck(killed);
        assertThat(execute(() -> window.model().file())).isEmpty();
    }

    @Test
    void losesAtMostTwoSecondsOfASavedJobAndLeavesItsFileAlone() throws Exception {
        Path file = folder.resolve("trial.wwj");
        JobFile.write(OutlinedJobs.outlined(), file);
        Killed killed = editAndKill(Optional.of(file));
        assertThat(JobFile.read(file)).isEqualTo(OutlinedJobs.outlined());
        assertThat(folder.resolve("trial.wwj.unsaved")).exists();
        restoreAndCheck(killed);
        assertThat(execute(() -> window.model().file()).map(Path::getFileName)).contains(Path.of("trial.wwj"));
        assertThat(execute(() -> window.model().hasUnsavedChanges())).isTrue();

        frame.menuItemWithPath("File", "Save job").click();
        await("the save", () -> execute(() -> !window.model().hasUnsavedChanges()));
        assertThat(JobFile.read(file)).isEqualTo(job());
        await("nothing unsaved", () -> Files.notExists(folder.resolve("trial.wwj.unsaved")));
    }

    @Test
    void deletesWhatIsNotWanted() throws Exception {
        editAndKill(Optional.empty());
        execute(() -> application.offerRecovery(window));
        pressInNotice("discard");
        await("nothing left", () -> filesOf(state.resolve("open-jobs")).isEmpty());
        assertThat(job().notes()).isEmpty();
    }

    @Test
    void keepsWorkInTheFolderOfNotesWhereThatOfTheJobIsGone() throws Exception {
        Path gone = Files.createDirectory(folder.resolve("stick"));
        Path file = gone.resolve("trial.wwj");
        JobFile.write(OutlinedJobs.outlined(), file);
        drop(file);
        await("the job", () -> execute(() -> window.model().file()).isPresent());
        Files.delete(file);
        Files.delete(gone);
        execute(() -> window.model().change(job -> job.withSpec(job.spec().withEaseMm(2))));
        await(
                "the work",
                () -> filesOf(state.resolve("open-jobs")).stream()
                        .anyMatch(kept -> kept.toString().endsWith(JobFile.EXTENSION)));
    }

    @Test
    void keepsNothingOfAClosedWindow() throws Exception {
        open(OutlinedJobs.outlined());
        execute(() -> window.model().change(job -> job.withSpec(job.spec().withEaseMm(2))));
        await("the work", () -> !filesOf(state.resolve("open-jobs")).isEmpty());
        execute(() -> window.model().undo());
        await("nothing unsaved", () -> filesOf(state.resolve("open-jobs")).isEmpty());
        execute(window::close);
        assertThat(filesOf(state.resolve("open-jobs"))).isEmpty();
    }

    private void restoreAndCheck(Killed killed) {
        List<AbandonedJob> found = new OpenJobs(state.resolve("open-jobs")).abandoned();
        assertThat(found).hasSize(1);
        execute(() -> application.offerRecovery(window));
        pressInNotice("restore");
        await("the work", () -> !job().notes().isEmpty() && job().silhouette().isPresent());
        Job restored = job();
        assertThat(Integer.parseInt(restored.notes())).isGreaterThanOrEqualTo(killed.lastSafeEdit());
        assertThat(new OpenJobs(state.resolve("open-jobs")).abandoned()).isEmpty();
    }

    private void pressInNotice(String button) {
        await(
                "the question",
                () -> execute(() -> robot.finder()
                                .findAll(component -> button.equals(component.getName()) && component.isShowing())
                                .size())
                        == 1);
        frame.button(button).click();
        robot.waitForIdle();
    }

    /** @param lastSafeEdit number of the last edit that was made {@link #LOST_MS} before the kill */
    private record Killed(int lastSafeEdit) {}

    private Killed editAndKill(Optional<Path> file) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                EditingProcess.class.getName(),
                state.resolve("open-jobs").toString()));
        file.ifPresent(path -> command.add(path.toString()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().put("XDG_STATE_HOME", state.resolve("process").toString());
        Process process = builder.start();
        List<String> edits = new ArrayList<>();
        try (BufferedReader out = process.inputReader()) {
            for (int i = 0; i < EDITS_BEFORE_THE_KILL; i++) {
                edits.add(out.readLine());
            }
            long killedAt = System.currentTimeMillis();
            process.destroyForcibly().waitFor(); // SIGKILL, as the manual of Process says of Linux
            int safe = edits.stream()
                    .map(line -> line.split(" "))
                    .filter(edit -> Long.parseLong(edit[1]) <= killedAt - LOST_MS)
                    .mapToInt(edit -> Integer.parseInt(edit[0]))
                    .max()
                    .orElseThrow();
            return new Killed(safe);
        }
    }

    private static List<Path> filesOf(Path directory) throws IOException {
        if (Files.notExists(directory)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(directory)) {
            // Without a temporary file that the killed process was just writing.
            return files.filter(file -> file.toString().matches(".*\\.(note|wwj)"))
                    .toList();
        }
    }
}
