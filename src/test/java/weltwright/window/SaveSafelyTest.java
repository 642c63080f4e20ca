package weltwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;
import org.assertj.swing.finder.JFileChooserFinder;
import org.assertj.swing.finder.JOptionPaneFinder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.io.Backup;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;

/** Saving from the window takes the place of nothing that would be missed. */
class SaveSafelyTest extends OpenWindow {
    @TempDir
    private Path folder;

    /** As where two people, or two windows, have the same job open. */
    @Test
    void aJobThatAnotherProgramChangedIsAskedAboutAndBothCanBeKept() throws IOException {
        Path file = folder.resolve("anouk.wwj");
        FileVersion opened = JobFile.write(Samples.outlined(), file);
        execute(() -> window.bench().lay(Samples.outlined(), Optional.of(opened)));
        JobFile.write(Samples.empty(), file);
        byte[] theirs = Files.readAllBytes(file);

        Job ours = changed();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
        answer("Keep both");
        choose(folder.resolve("anouk-2"));
        await("the job", () -> !execute(() -> window.bench().unsaved()));
        assertThat(file).hasBinaryContent(theirs);
        assertThat(JobFile.read(folder.resolve("anouk-2.wwj"))).isEqualTo(ours);
    }

    @Test
    void replacedAllTheSameTheOtherIsKeptAsTheVersionBefore() throws IOException {
        Path file = folder.resolve("anouk.wwj");
        FileVersion opened = JobFile.write(Samples.outlined(), file);
        execute(() -> window.bench().lay(Samples.outlined(), Optional.of(opened)));
        JobFile.write(Samples.empty(), file);

        Job ours = changed();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
        answer("Replace it");
        await("the job", () -> !execute(() -> window.bench().unsaved()));
        assertThat(JobFile.read(file)).isEqualTo(ours);
        assertThat(JobFile.read(Backup.of(file))).isEqualTo(Samples.empty());
    }

    @Test
    void nothingIsSavedOverAFileOfAnotherKind() throws IOException {
        byte[] letter = "Dear customer".getBytes();
        Path file = Files.write(folder.resolve("letter.wwj"), letter);
        lay(Samples.outlined());
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
        choose(file);
        answer("OK");
        JFileChooser chooser = JFileChooserFinder.findFileChooser().using(robot).target();
        execute(chooser::cancelSelection);
        assertThat(file).hasBinaryContent(letter);
    }

    private Job changed() {
        execute(() -> window.bench().change(job -> job.withOrder("B. Customer", "", Optional.empty(), "")));
        return job();
    }

    private void answer(String words) {
        JOptionPaneFinder.findOptionPane().using(robot).buttonWithText(words).click();
        robot.waitForIdle();
    }

    private void choose(Path file) {
        JFileChooser chooser = JFileChooserFinder.findFileChooser().using(robot).target();
        execute(() -> {
            chooser.setSelectedFile(file.toFile());
            chooser.approveSelection();
        });
        robot.waitForIdle();
    }
}
