package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import org.assertj.swing.finder.JFileChooserFinder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.Job;

/** Keys mean one thing at each place. */
class KeysTest extends MainWindowTestBase {

    @Test
    void undoesTypingFirstAndThenTheJob() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        frame.comboBox("drawn with").selectItem("Left hand");
        Job left = job();
        frame.textBox("ease").focus();
        frame.textBox("ease").enterText("2");
        frame.textBox("ease").requireText("2");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        frame.textBox("ease").requireText(OutlinedJobs.outlined().spec().easeMm() + " mm");
        await("the typed ease to go", () -> job().equals(left));
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        frame.textBox("ease").requireText("2");
        await("the typed ease", () -> job().spec().easeMm() == 2);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        await("the typed ease to go again", () -> job().equals(left));
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void undoesACommittedEntryInTheJob() {
        open(OutlinedJobs.outlined());
        type("handle thickness", "22");
        Job typed = job();
        assertThat(typed.settings().measuredHandleMm()).isEqualTo(22);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
        frame.textBox("handle thickness").requireText("19 mm");
    }

    @Test
    void undoesTypedNotesFirst() {
        open(OutlinedJobs.outlined());
        frame.button("job title").click();
        frame.textBox("notes").focus().enterText("x");
        assertThat(job().notes()).contains("x");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
        assertThat(execute(() -> window.model().canUndo())).isFalse();
    }

    @Test
    void opensAPhotoFromWithinAFieldAndKeepsItsDirection() {
        open(OutlinedJobs.outlined());
        frame.textBox("handle thickness").focus();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_O);
        JFileChooser chooser = JFileChooserFinder.findFileChooser().using(robot).target();
        execute(chooser::cancelSelection);
        assertThat(execute(() -> frame.textBox("handle thickness")
                        .target()
                        .getComponentOrientation()
                        .isLeftToRight()))
                .isTrue();
    }

    @ParameterizedTest
    @EnumSource(WorkflowStage.class)
    void hasOneMeaningForEachMnemonicOfAStage(WorkflowStage stage) {
        for (Job job : List.of(OutlinedJobs.empty(), OutlinedJobs.outlined(), OutlinedJobs.traced(0.7))) {
            open(job);
            frame.toggleButton("stage " + stage.label()).click();
            robot.waitForIdle();
            List<String> keys = new ArrayList<>();
            execute(() -> collect(window.frame().getRootPane(), keys));
            assertThat(keys).contains("Alt F", "Alt E", "Alt V", "Alt H").doesNotHaveDuplicates();
        }
    }

    @Test
    void hasOneMeaningForEachMnemonicOfAMenu() {
        execute(() -> {
            JMenuBar bar = window.frame().getJMenuBar();
            for (int i = 0; i < bar.getMenuCount(); i++) {
                JMenu menu = bar.getMenu(i);
                List<String> keys = new ArrayList<>();
                for (Component item : menu.getMenuComponents()) {
                    addMnemonic(item, keys);
                }
                assertThat(keys).as(menu.getText()).isNotEmpty().doesNotHaveDuplicates();
            }
        });
    }

    /** Collects the mnemonics of what is visible, and of what a collapsed section would show. */
    static void collect(Component component, List<String> keys) {
        if (!component.isVisible() && !(component.getParent() instanceof CollapsibleSection)) {
            return;
        }
        addMnemonic(component, keys);
        if (component instanceof Container container) {
            for (Component child : container.getComponents()) {
                collect(child, keys);
            }
        }
    }

    private static void addMnemonic(Component component, List<String> keys) {
        int key = component instanceof AbstractButton button
                ? button.getMnemonic()
                : component instanceof JLabel label ? label.getDisplayedMnemonic() : 0;
        if (key != 0) {
            keys.add("Alt " + KeyEvent.getKeyText(key));
        }
    }
}
