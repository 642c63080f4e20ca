package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.util.concurrent.Callable;
import javax.swing.JButton;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;

/** Checks that the window asks for the edge side where it is uncertain, and only there. */
class EdgeSideQuestionTest extends MainWindowTestBase {

    @Test
    void asksUntilTheSidesAreExchanged() {
        asks();
        frame.toggleButton("other side").click();
        robot.waitForIdle();
        isTold(!OutlinedJobs.KNIFE.spineOnLeft());
        isAnswered();
        frame.toggleButton("other side").requireSelected();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        isAsked();
    }

    @Test
    void asksUntilTheSidesAreConfirmed() {
        asks();
        frame.button("this side").click();
        robot.waitForIdle();
        isTold(OutlinedJobs.KNIFE.spineOnLeft());
        isAnswered();
        frame.toggleButton("other side").requireNotSelected();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        isAsked();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        isAnswered();
    }

    @Test
    void doesNotAskWhereTheSideIsCertain() {
        open(OutlinedJobs.traced(0.95));
        frame.toggleButton("stage Knife").click();
        isAnswered();
    }

    private void asks() {
        open(OutlinedJobs.traced(0.75));
        frame.toggleButton("stage Knife").click();
        isAsked();
    }

    private void isTold(boolean spineOnLeft) {
        assertThat(job().spineOnLeft()).contains(spineOnLeft);
        assertThat(job().silhouette().orElseThrow().spineOnLeft()).isEqualTo(spineOnLeft);
        assertThat(job().isCorrected()).isFalse();
    }

    private void isAsked() {
        assertThat(asked()).contains("which side is the edge");
        assertThat(frame.textBox("next step").text()).contains("which side is the edge");
        frame.button("this side").requireVisible();
    }

    private void isAnswered() {
        assertThat(asked()).isEmpty();
        assertThat(frame.textBox("next step").text()).doesNotContain("which side is the edge");
        JButton thisSide = robot.finder().findByName("this side", JButton.class, false);
        Callable<Boolean> shown = thisSide::isShowing;
        assertThat(execute(shown)).isFalse();
    }

    /** What the form asks; nothing where the words are hidden. */
    private String asked() {
        JTextComponent words = robot.finder().findByName("side to look at", JTextComponent.class, false);
        Callable<String> shown = () -> words.isShowing() ? words.getText() : "";
        return execute(shown);
    }
}
