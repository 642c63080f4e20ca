package weltwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.util.concurrent.Callable;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;

/** The window asks somebody to look which side is the edge where the outline does not tell, and there alone. */
class EdgeAskedTest extends OpenWindow {

    @Test
    void asksWhereItIsNotSureUntilSomebodyExchangesTheSides() {
        lay(Samples.traced(0.75));
        frame.toggleButton("stage Knife").click();
        assertThat(asked()).contains("which side is the edge", "press the button above");
        assertThat(frame.textBox("next step").text()).contains("which side is the edge");
        frame.toggleButton("other side").click();
        robot.waitForIdle();
        assertThat(job().silhouette().orElseThrow().spineOnLeft()).isFalse();
        assertThat(asked()).isEmpty();
        assertThat(frame.textBox("next step").text()).doesNotContain("which side is the edge");
        frame.toggleButton("other side").click();
        robot.waitForIdle();
        assertThat(asked()).contains("which side is the edge");
    }

    @Test
    void doesNotAskWhereItIsSure() {
        lay(Samples.traced(0.95));
        frame.toggleButton("stage Knife").click();
        assertThat(asked()).isEmpty();
        assertThat(frame.textBox("next step").text()).doesNotContain("which side is the edge");
    }

    /** What the form says below the button; nothing where the words are hidden. */
    private String asked() {
        JTextComponent words = robot.finder().findByName("side to look at", JTextComponent.class, false);
        Callable<String> shown = () -> words.isShowing() ? words.getText() : "";
        return execute(shown);
    }
}
