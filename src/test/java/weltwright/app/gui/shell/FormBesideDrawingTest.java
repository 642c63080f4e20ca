package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Dimension;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JToggleButton;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;

/** The form as a drawer in a narrow window. */
final class FormBesideDrawingTest extends MainWindowTestBase {
    @Test
    void theFormIsPutAwayInANarrowWindowAndTheNextStepStays() {
        open(OutlinedJobs.traced(1));
        awaitNextStep("To the sheath");
        JComponent canvas = robot.finder().findByName("outline drawing", JComponent.class);
        JToggleButton drawer = robot.finder().findByName("show form", JToggleButton.class, false);
        JComponent handle = robot.finder().findByName("handle thickness", JComponent.class, false);
        assertThat(execute(drawer::isShowing)).as("in a wide window").isFalse();

        setSize(1024, 700);
        await("the drawer's button", () -> execute(drawer::isShowing));
        int narrow = execute(canvas::getWidth);
        frame.toggleButton("show form").click();
        await("the wider drawing", () -> execute(() -> canvas.getWidth() > narrow + 300));
        JButton onward = robot.finder().findByName("onward", JButton.class, true);
        assertThat(execute(handle::isShowing)).isFalse();
        assertThat(execute(() -> window.frame().getRootPane().getDefaultButton()))
                .isSameAs(onward);

        frame.button("onward").click();
        await(
                "the form of the sheath",
                () -> execute(() -> drawer.isSelected()
                        && frame.textBox("leather thickness").target().isShowing()));

        frame.toggleButton("show form").click();
        setSize(1300, 700);
        await(
                "the form again",
                () -> execute(() -> !drawer.isShowing()
                        && frame.textBox("leather thickness").target().isShowing()));
    }

    private void setSize(int width, int height) {
        execute(() -> window.frame().setSize(new Dimension(width, height)));
        robot.waitForIdle();
    }
}
