package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.swing.JFileChooser;
import javax.swing.JTable;
import javax.swing.JTextField;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.core.matcher.JButtonMatcher;
import org.assertj.swing.finder.JFileChooserFinder;
import org.assertj.swing.fixture.FrameFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.LongRun;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.theme.StateIcon;
import weltwright.io.DefectLog;
import weltwright.job.JobFile;

/**
 * The whole job from the start page to a saved PDF and the first step at the bench, by keyboard and by mouse. A long
 * run is a day's work of 60 jobs.
 */
class WholeJobTest extends MainWindowTestBase {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();

    @TempDir
    private Path folder;

    /** Each is begun on the start page of a window of its own; the odd ones are made by mouse. */
    @Test
    void jobsByKeyboardAloneAndByMouseOneAfterAnotherLogNoDefect() throws IOException {
        long loggedBytes = loggedBytes();
        int jobs = LongRun.tries(2, 60);
        for (int i = 1; i <= jobs; i++) {
            Path pdf = folder.resolve(i + ".pdf");
            Path file = folder.resolve(i + ".wwj");
            if (i % 2 == 0) {
                makeByKeyboardAlone(pdf);
                press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
                typeIntoChooser(file);
                awaitSaved(file);
                giveFocusBack();
                press(KeyEvent.VK_CONTROL, KeyEvent.VK_N);
            } else {
                makeByMouse(pdf);
                frame.menuItemWithPath("File", "Save job").click();
                choose(file);
                awaitSaved(file);
                frame.menuItemWithPath("File", "New job").click();
            }
            assertHasPages(pdf);
            assertThat(JobFile.read(file).workDone()).hasSize(1);
            goOnInTheNewWindow();
            assertThat(loggedBytes()).as("defects after %d jobs", i).isEqualTo(loggedBytes);
        }
    }

    private void makeByKeyboardAlone(Path pdf) {
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_O);
        typeIntoChooser(PHOTO);
        await("the photo", () -> job().photo().isPresent());
        giveFocusBack();
        awaitFocus("handle thickness");
        robot.enterText("19");
        press(KeyEvent.VK_TAB);
        awaitFocus("spine thickness");
        robot.enterText("3.5");
        press(KeyEvent.VK_ENTER);
        await("the outline", () -> job().trace().isPresent());
        awaitNextStep("To the sheath");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
        awaitPattern();
        awaitNextStep("To the leather");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
        awaitNextStep("To the paper");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
        awaitNextStep("Save as PDF…");
        awaitPattern();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
        typeIntoChooser(pdf);
        await("the PDF", () -> Files.exists(pdf));

        giveFocusBack();
        press(KeyEvent.VK_ALT, KeyEvent.VK_5);
        awaitWorkSteps();
        awaitFocus("work steps");
        press(KeyEvent.VK_SPACE);
        await("the tick", () -> job().workDone().size() == 1);
    }

    /** Only numbers and names are typed. */
    private void makeByMouse(Path pdf) {
        frame.button(JButtonMatcher.withText("New from a photo…")).click();
        choose(PHOTO);
        await("the photo", () -> job().photo().isPresent());
        frame.textBox("handle thickness").click();
        type("handle thickness", "19");
        frame.textBox("spine thickness").click();
        type("spine thickness", "3.5");
        await("the outline", () -> job().trace().isPresent());
        awaitNextStep("To the sheath");
        frame.button("onward").click();
        awaitPattern();
        frame.button("onward To the paper").click();
        awaitNextStep("Save as PDF…");
        awaitPattern();
        frame.button("onward").click();
        choose(pdf);
        await("the PDF", () -> Files.exists(pdf));
        await(
                "the tick at the paper",
                () -> execute(() -> frame.toggleButton("stage Paper").target().getIcon()) == StateIcon.TICK);

        frame.toggleButton("stage Bench").click();
        JTable steps = awaitWorkSteps();
        Rectangle box = execute(() -> steps.getCellRect(0, 0, false));
        robot.click(steps, new Point(box.x + box.width / 2, box.y + 14), MouseButton.LEFT_BUTTON, 1);
        await("the tick", () -> job().workDone().size() == 1);
    }

    private JTable awaitWorkSteps() {
        JTable steps = frame.table("work steps").target();
        await("the steps", () -> execute(() -> steps.getRowCount() > 0));
        return steps;
    }

    private void awaitSaved(Path file) {
        await(
                "the job's file",
                () -> Files.exists(file) && execute(() -> !window.model().hasUnsavedChanges()));
    }

    /** Closes the window as its frame's button does, and goes on in the one that has opened beside it. */
    private void goOnInTheNewWindow() {
        await("the new window", () -> execute(() -> application.windows().size() == 2));
        FrameFixture done = frame;
        window = execute(() -> application.windows().stream()
                .filter(each -> each != window)
                .findFirst()
                .orElseThrow());
        frame = new FrameFixture(robot, window.frame());
        done.close();
        await(
                "the old window to close",
                () -> execute(() -> application.windows().size() == 1));
        giveFocusBack();
    }

    private static long loggedBytes() throws IOException {
        Path log = DefectLog.standard().file();
        return Files.exists(log) ? Files.size(log) : 0;
    }

    private static void assertHasPages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getNumberOfPages()).isGreaterThan(1);
        }
    }

    /** Types a file's name into the dialog that has come up, and presses Enter. */
    private void typeIntoChooser(Path file) {
        JFileChooser chooser = JFileChooserFinder.findFileChooser()
                .withTimeout(60_000)
                .using(robot)
                .target();
        await("the field for the name", () -> execute(() -> focusOwner() instanceof JTextField));
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_A);
        robot.enterText(file.toString());
        press(KeyEvent.VK_ENTER);
        await("the dialog to close", () -> execute(() -> !chooser.isShowing()));
    }

    /** Gives the focus back to the window whose dialog has closed, as a window manager does; there is none here. */
    private void giveFocusBack() {
        execute(() -> {
            window.frame().toFront();
            Component last = window.frame().getMostRecentFocusOwner();
            (last == null ? window.frame() : last).requestFocus();
        });
        robot.waitForIdle();
    }

    private static Component focusOwner() {
        return KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
    }
}
