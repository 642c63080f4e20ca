package weltwright.app.gui.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.image.Photo;

/** What must be measured is empty until it is typed, and what follows says what it waits for. */
class UnmeasuredKnifeTest extends MainWindowTestBase {

    @Test
    void waitsForBothThicknessesOneAfterTheOther() {
        open(OutlinedJobs.empty().withPhoto(Photo.read(Path.of("sample-images", "drop-point.jpg"))));
        frame.textBox("handle thickness").requireText("");
        frame.textBox("spine thickness").requireText("");
        assertThat(placeholder("handle thickness")).isEqualTo("such as 19 mm");
        assertThat(placeholder("spine thickness")).isEqualTo("such as 3.5 mm");
        assertThat(frame.textBox("next step").text()).contains("handle and spine", "the outline waits for them");
        frame.button("onward").requireText("Type them").click();
        awaitFocus("handle thickness");

        type("handle thickness", "3/4 in");
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(job().settings().handleThicknessMm()).isEqualTo(OptionalDouble.of(0.75 * 25.4));
        assertThat(frame.textBox("next step").text()).contains("Measure the spine");
        frame.button("onward").click();
        awaitFocus("spine thickness");
        frame.textBox("spine thickness").enterText("4");
        frame.textBox("handle thickness").focus();
        awaitNextStep("Find the outline");

        frame.textBox("spine thickness").deleteText().enterText("\n");
        assertThat(job().settings().spineThicknessMm()).isEmpty();
        frame.button("onward").requireText("Type them");

        type("spine thickness", "4");
        await("the outline, at Enter", () -> job().trace().isPresent());
    }

    @Test
    void makesNoPatternOfAnUnmeasuredKnife() {
        open(OutlinedJobs.empty().withSilhouette(OutlinedJobs.KNIFE));
        frame.toggleButton("stage Sheath").click();
        robot.waitForIdle();
        assertThat(frame.textBox("next step").text()).contains("the pattern waits for them");
        assertThat(execute(() -> window.pattern())).isEmpty();
        frame.button("onward").click();
        awaitFocus("handle thickness");
        type("handle thickness", "20");
        type("spine thickness", "4");
        awaitPattern();
    }

    private Object placeholder(String field) {
        return execute(() -> frame.textBox(field).target().getClientProperty("JTextField.placeholderText"));
    }
}
