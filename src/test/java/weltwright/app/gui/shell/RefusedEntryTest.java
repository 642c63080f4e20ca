package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;
import org.assertj.swing.data.TableCell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.image.Photo;

/** What depends on an entry that was refused stops, and the window leads back to the entry. */
class RefusedEntryTest extends MainWindowTestBase {

    @Test
    void showsNoPatternWhileTheLeatherIsRefused() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        type("leather thickness", "abc");
        assertThat(execute(() -> window.pattern())).isEmpty();
        assertThat(frame.textBox("next step").text()).contains("leather thickness", "abc");
        frame.button("onward").requireText("Mend the entry");
        assertThat(execute(() -> robot.finder()
                        .findByName("pattern drawing")
                        .getAccessibleContext()
                        .getAccessibleDescription()))
                .isEqualTo("No pattern yet");

        type("leather thickness", "3.2 mm");
        awaitPattern();
        assertThat(pattern().pieces().get(0).thicknessMm()).isCloseTo(3.2, within(1e-9));
        frame.button("onward").requireText("To the leather");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Save pattern as PDF…", "Save pattern as SVG…", "Save pattern as DXF…", "Print pattern…"})
    void makesNothingOfThePatternAndGoesToTheRefusedEntry(String item) {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        // In a section, which is collapsed afterwards.
        frame.toggleButton("fold Stitches").click();
        robot.waitForIdle();
        type("stitch margin", "abc");
        frame.toggleButton("stage Paper").click();
        assertThat(frame.textBox("next step").text()).contains("stitch margin", "abc");
        frame.menuItemWithPath("File", item).click();
        robot.waitForIdle();
        assertThat(robot.finder().findAll(c -> c instanceof JFileChooser && c.isShowing()))
                .isEmpty();
        frame.toggleButton("stage Sheath").requireSelected();
        awaitFocus("stitch margin");
    }

    @Test
    void makesNothingOfThePatternWhileACellOfTheHardwareIsRefused() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        frame.toggleButton("tab Hardware").click();
        frame.table("hardware at hand").cell(TableCell.row(0).column(2)).startEditing();
        frame.textBox("cell").setText("abc");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_S);
        assertThat(robot.finder().findAll(c -> c instanceof JFileChooser && c.isShowing()))
                .isEmpty();
        assertThat(frame.textBox("hardware wrong").text()).contains("abc");
        frame.textBox("cell").requireText("abc");
    }

    @Test
    void tracesNothingWhileTheHandleIsRefused() throws Exception {
        open(OutlinedJobs.measured().withPhoto(Photo.read(Path.of("sample-images", "drop-point.jpg"))));
        type("handle thickness", "abc");
        frame.textBox("spine thickness").focus();
        frame.button("onward").requireText("Mend the entry").click();
        awaitFocus("handle thickness");
        assertThat(job().trace()).isEmpty();
        press(KeyEvent.VK_ESCAPE);
        frame.textBox("handle thickness").requireText("19 mm");
        frame.button("onward").requireText("Find the outline");
    }

    @Test
    void forgetsARefusedEntryWithItsJob() {
        open(OutlinedJobs.outlined());
        type("handle thickness", "abc");
        frame.textBox("spine thickness").deleteText().enterText("9");
        open(OutlinedJobs.outlined().withOrder("B. Customer", "", Optional.empty(), ""));
        frame.textBox("handle thickness").requireText("19 mm");
        frame.textBox("spine thickness").requireText("3.5 mm");
        frame.button("onward").requireText("To the sheath");
    }
}
