package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.JMenuItem;
import javax.swing.SwingUtilities;
import org.assertj.swing.finder.JFileChooserFinder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.io.Backup;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;

/** Checks that saving from the window replaces nothing without a question. */
class SaveConflictTest extends MainWindowTestBase {
    /** A dialog takes long to come on a busy machine. */
    private static final int LONGEST_MS = 60_000;

    @TempDir
    private Path folder;

    /** As where two people, or two windows, have the same job open. */
    @Test
    void asksWhereAnotherProgramChangedTheJobAndKeepsBoth() throws IOException {
        Path file = folder.resolve("anouk.wwj");
        FileVersion opened = JobFile.write(OutlinedJobs.outlined(), file);
        execute(() -> window.model().open(OutlinedJobs.outlined(), Optional.of(opened)));
        JobFile.write(OutlinedJobs.empty(), file);
        byte[] theirs = Files.readAllBytes(file);

        Job ours = changed();
        Files.createFile(folder.resolve("anouk-2.wwj"));
        save();
        answer("Keep both");
        JFileChooser chooser = JFileChooserFinder.findFileChooser()
                .withTimeout(LONGEST_MS)
                .using(robot)
                .target();
        assertThat(chooser.getSelectedFile().toPath()).as("a free name").isEqualTo(folder.resolve("anouk-3.wwj"));
        execute(chooser::approveSelection);
        await("the job", () -> !execute(() -> window.model().hasUnsavedChanges()));
        assertThat(file).hasBinaryContent(theirs);
        assertThat(JobFile.read(folder.resolve("anouk-3.wwj"))).isEqualTo(ours);
    }

    @Test
    void keepsTheReplacedJobAsBackup() throws IOException {
        Path file = folder.resolve("anouk.wwj");
        FileVersion opened = JobFile.write(OutlinedJobs.outlined(), file);
        execute(() -> window.model().open(OutlinedJobs.outlined(), Optional.of(opened)));
        JobFile.write(OutlinedJobs.empty(), file);

        Job ours = changed();
        save();
        answer("Replace it");
        await("the job", () -> !execute(() -> window.model().hasUnsavedChanges()));
        assertThat(JobFile.read(file)).isEqualTo(ours);
        assertThat(JobFile.read(Backup.of(file))).isEqualTo(OutlinedJobs.empty());
    }

    @Test
    void asksAgainAfterCancelling() throws IOException {
        Path file = folder.resolve("anouk.wwj");
        FileVersion opened = JobFile.write(OutlinedJobs.outlined(), file);
        execute(() -> window.model().open(OutlinedJobs.outlined(), Optional.of(opened)));
        JobFile.write(OutlinedJobs.empty(), file);
        byte[] theirs = Files.readAllBytes(file);

        changed();
        for (int i = 0; i < 2; i++) {
            save();
            answer("Cancel");
        }
        assertThat(execute(() -> window.model().hasUnsavedChanges())).isTrue();
        assertThat(file).hasBinaryContent(theirs);
    }

    @Test
    void refusesToReplaceAFileOfAnotherKind() throws IOException {
        byte[] letter = "Dear customer".getBytes();
        Path file = Files.write(folder.resolve("letter.wwj"), letter);
        open(OutlinedJobs.outlined());
        save();
        choose(file);
        answer("OK");
        JFileChooser chooser = JFileChooserFinder.findFileChooser()
                .withTimeout(LONGEST_MS)
                .using(robot)
                .target();
        execute(chooser::cancelSelection);
        assertThat(file).hasBinaryContent(letter);
    }

    private Job changed() {
        execute(() -> window.model().change(job -> job.withOrder("B. Customer", "", Optional.empty(), "")));
        return job();
    }

    /** Without mouse or keyboard: what they do may be felt by a dialog that is about to go. */
    private void save() {
        JMenuItem item = frame.menuItemWithPath("File", "Save job").target();
        SwingUtilities.invokeLater(item::doClick);
    }
}
