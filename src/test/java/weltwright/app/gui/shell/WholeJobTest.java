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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.theme.StateIcon;

/** The whole job from the start page to a saved PDF and the first step at the bench, by keyboard and by mouse. */
class WholeJobTest extends MainWindowTestBase {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();

    @TempDir
    private Path folder;

    @Test
    void byKeyboardAlone() throws IOException {
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
        awaitNextStep("Find the outline");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
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
        Path pdf = folder.resolve("keys.pdf");
        typeIntoChooser(pdf);
        await("the PDF", () -> Files.exists(pdf));
        assertHasPages(pdf);

        giveFocusBack();
        press(KeyEvent.VK_ALT, KeyEvent.VK_5);
        JTable steps = robot.finder().findByName("work steps", JTable.class);
        await("the steps", () -> execute(() -> steps.getRowCount() > 0));
        awaitFocus("work steps");
        press(KeyEvent.VK_SPACE);
        assertThat(job().workDone()).hasSize(1);
    }

    /** Only numbers and names are typed. */
    @Test
    void byMouse() throws IOException {
        frame.button(JButtonMatcher.withText("New from a photo…")).click();
        choose(PHOTO);
        await("the photo", () -> job().photo().isPresent());
        frame.textBox("handle thickness").click();
        type("handle thickness", "19");
        frame.textBox("spine thickness").click();
        type("spine thickness", "3.5");
        awaitNextStep("Find the outline");
        frame.button("onward").click();
        await("the outline", () -> job().trace().isPresent());
        awaitNextStep("To the sheath");
        frame.button("onward").click();
        awaitPattern();
        frame.button("onward To the paper").click();
        awaitNextStep("Save as PDF…");
        awaitPattern();
        frame.button("onward").click();
        Path pdf = folder.resolve("mouse.pdf");
        choose(pdf);
        await("the PDF", () -> Files.exists(pdf));
        assertHasPages(pdf);
        await(
                "the tick at the paper",
                () -> execute(() -> frame.toggleButton("stage Paper").target().getIcon()) == StateIcon.TICK);

        frame.toggleButton("stage Bench").click();
        JTable steps = frame.table("work steps").target();
        await("the steps", () -> execute(() -> steps.getRowCount() > 0));
        Rectangle box = execute(() -> steps.getCellRect(0, 0, false));
        robot.click(steps, new Point(box.x + box.width / 2, box.y + 14), MouseButton.LEFT_BUTTON, 1);
        await("the tick", () -> job().workDone().size() == 1);
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
