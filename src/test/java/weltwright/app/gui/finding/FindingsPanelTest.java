package weltwright.app.gui.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JToggleButton;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.Job;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.SheathSpec;

/** What the checks find is listed at the foot of the drawings, goes to its place by a click and is mended by one. */
class FindingsPanelTest extends MainWindowTestBase {

    @Test
    void aRemedyMendsWhatWasFoundAndIsTakenBack() {
        open(rivetedOnTheBlade());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        frame.toggleButton("open findings").click();
        await("a remedy", () -> execute(() -> !buttons("Sew the strap on").isEmpty()));
        execute(() -> buttons("Sew the strap on").get(0).doClick());
        assertThat(job().spec().belt().style()).isEqualTo(BeltAttachment.Style.SEWN_STRAP);
        awaitPattern();
        await(
                "the finding to go",
                () -> execute(() -> buttons("Sew the strap on").isEmpty()));
        execute(() -> window.model().undo());
        assertThat(job()).isEqualTo(rivetedOnTheBlade());
    }

    @Test
    void aClickShowsThePlaceOnTheSection() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        frame.toggleButton("open findings").click();
        AbstractButton welt = execute(() -> shows("The welt is"));
        execute(() -> welt.doClick());
        JToggleButton tab = robot.finder().findByName("tab Cross-section", JToggleButton.class);
        await("the section", () -> execute(tab::isSelected));
        awaitFocus("station drawing");
    }

    /** The outline of this job is not sure of its edge's side; the finding is seen from the sheath, too. */
    @Test
    void findingsOfTheOutlineAreListedAtTheSheathAndLeadBack() {
        open(OutlinedJobs.traced(0.7));
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        frame.toggleButton("open findings").click();
        execute(() -> shows("which side is the edge").doClick());
        await(
                "the outline",
                () -> execute(() ->
                        robot.finder().findByName("outline drawing", false).isShowing()));
        execute(() -> buttons("Yes, red is the edge").get(0).doClick());
        assertThat(job().asksForEdge()).isFalse();
    }

    private static Job rivetedOnTheBlade() {
        SheathSpec spec = OutlinedJobs.outlined().spec();
        return OutlinedJobs.outlined()
                .withSpec(spec.withBelt(spec.belt().withStyle(BeltAttachment.Style.RIVETED_STRAP)));
    }

    private AbstractButton shows(String text) {
        return robot
                .finder()
                .findAll(component -> component instanceof AbstractButton && component.isShowing())
                .stream()
                .map(AbstractButton.class::cast)
                .filter(button -> button.getAccessibleContext().getAccessibleName() != null
                        && button.getAccessibleContext().getAccessibleName().startsWith("Show: ")
                        && button.getAccessibleContext().getAccessibleName().contains(text))
                .findFirst()
                .orElseThrow();
    }

    private List<AbstractButton> buttons(String label) {
        return robot
                .finder()
                .findAll(component -> component instanceof AbstractButton && component.isShowing())
                .stream()
                .map(AbstractButton.class::cast)
                .filter(button -> label.equals(button.getText()))
                .toList();
    }
}
