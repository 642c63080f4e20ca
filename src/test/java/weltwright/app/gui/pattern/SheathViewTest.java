package weltwright.app.gui.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import javax.swing.JTable;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.data.TableCell;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.assembled.StationCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.assembly.AssemblyPlan;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.sheath.spec.BeltAttachment;

/** What can be looked at of a sheath, with mouse and keys. */
class SheathViewTest extends MainWindowTestBase {

    @BeforeEach
    void layTheKnife() {
        Job job = OutlinedJobs.outlined();
        lay(job.withSpec(job.spec().withHandleDepthMm(0)));
        frame.toggleButton("stage Sheath").click();
        await("the pattern", () -> execute(() -> window.pattern().isPresent()));
    }

    @Test
    void theCrossSectionFollowsTheLineThatIsDraggedAlongTheKnife() {
        press(KeyEvent.VK_ALT, KeyEvent.VK_6);
        StationCanvas where = (StationCanvas) robot.finder().findByName("station drawing");
        double begun = cutAtMm();
        press(KeyEvent.VK_SHIFT, KeyEvent.VK_RIGHT);
        assertThat(cutAtMm()).isCloseTo(begun + 10, within(0.06));
        Point from = execute(() -> where.viewport().toPx(new Point(40, 0)));
        Point to = execute(() -> where.viewport().toPx(new Point(70, 0)));
        robot.moveMouse(where, awt(from));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        robot.moveMouse(where, awt(from.towards(to, 0.5)));
        robot.moveMouse(where, awt(to));
        letGo();
        // The throat is at the heel, x = 0; a pixel is a fraction of a mm.
        assertThat(cutAtMm()).isCloseTo(70, within(0.6));
        double dragged = cutAtMm();
        press(KeyEvent.VK_RIGHT);
        assertThat(cutAtMm()).isCloseTo(dragged + 1, within(0.06));
        press(KeyEvent.VK_HOME);
        assertThat(cutAtMm()).isLessThan(5);
    }

    /** The blade of the sample is 3.5 mm at its spine, as typed, and 1 in is 25.4 mm. */
    @Test
    void aPlaceIsTypedAndItsSizesAreRead() {
        frame.toggleButton("sight Cross-section").click();
        frame.textBox("place, from the throat").deleteText().enterText("1 in\n");
        assertThat(frame.textBox("cross-section sizes").text())
                .contains("knife 3.5 mm thick", "air over the knife 0.8 mm");
        frame.menuItemWithPath("View", "Sizes in inches").click();
        assertThat(frame.textBox("cross-section sizes").text())
                .contains("knife 9/64 in thick")
                .doesNotContain(" mm");
    }

    @Test
    void theKnifeIsDrawnHeldAndGoneThroughByHand() {
        frame.toggleButton("sight Test draw").click();
        frame.button("play").click();
        await(
                "the knife to move",
                () -> execute(() -> frame.slider("drawn").target().getValue() > 100));
        frame.button("play").requireText("Hold").click();
        frame.button("play").requireText("Draw");
        int held = execute(() -> frame.slider("drawn").target().getValue());
        robot.focus(frame.slider("drawn").target());
        press(KeyEvent.VK_HOME);
        assertThat(execute(() -> frame.slider("drawn").target().getValue()))
                .isZero()
                .isLessThan(held);
        assertThat(frame.textBox("draw told").text()).startsWith("Drawn 0.0 mm: edge to stitch");
        press(KeyEvent.VK_END);
        assertThat(frame.textBox("draw told").text()).contains("the edge is out");
    }

    @Test
    void theOrderOfWorkIsThatOfTheBenchCardAndSaysWhy() {
        AssemblyPlan plan = AssemblyPlan.of(execute(() -> window.pattern().orElseThrow()));
        frame.toggleButton("sight Order of work").click();
        JTable table = frame.table("work steps").target();
        await(
                "the steps",
                () -> execute(table::getRowCount) == plan.order().operations().size());
        for (int row = 0; row < plan.order().operations().size(); row++) {
            assertThat(frame.table("work steps").valueAt(TableCell.row(row).column(1)))
                    .isEqualTo(plan.order().operations().get(row).work());
        }
        var constraint = plan.order().constraints().get(0);
        int after = plan.order().operations().indexOf(constraint.after());
        execute(() -> table.setRowSelectionInterval(after, after));
        assertThat(frame.textBox("why in this order").text()).contains(constraint.why());
    }

    @Test
    void theHardwareOfAStrapIsListedWithItsPunch() {
        execute(() -> window.bench()
                .change(job ->
                        job.withSpec(job.spec().with(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4)))));
        frame.toggleButton("sight Hardware").click();
        JTable needed = frame.table("hardware needed").target();
        await("the rivets", () -> execute(needed::getRowCount) > 0);
        assertThat(execute(() -> (String) needed.getValueAt(0, 3))).endsWith(" mm");
        frame.table("hardware at hand").enterValue(TableCell.row(0).column(2), "1/8 in");
        robot.waitForIdle();
        assertThat(job().spec().hardware().fasteners().get(0).postMm()).isCloseTo(25.4 / 8, within(1e-12));
    }

    private double cutAtMm() {
        String text = frame.textBox("place, from the throat").text();
        return Double.parseDouble(text.replace(" mm", ""));
    }
}
