package weltwright.app.gui.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JButton;
import javax.swing.JSlider;
import javax.swing.JTable;
import org.assertj.swing.data.TableCell;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.assembled.StationCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.sheath.spec.BeltAttachment;

/** The tabs of the sheath, operated by mouse and keys. */
class PatternTabsTest extends MainWindowTestBase {

    @BeforeEach
    void openTheJob() {
        Job job = OutlinedJobs.outlined();
        open(job.withSpec(job.spec().withHandleDepthMm(0)));
        frame.toggleButton("stage Sheath").click();
        await("the pattern", () -> execute(() -> window.pattern().isPresent()));
    }

    @Test
    void cutsTheCrossSectionAtTheLineDraggedAlongTheKnife() {
        press(KeyEvent.VK_ALT, KeyEvent.VK_7);
        StationCanvas where = (StationCanvas) robot.finder().findByName("station drawing");
        double begun = cutAtMm();
        press(KeyEvent.VK_SHIFT, KeyEvent.VK_RIGHT);
        assertThat(cutAtMm()).isCloseTo(begun + 10, within(0.06));
        Point from = execute(() -> where.viewport().toPx(new Point(40, 0)));
        Point to = execute(() -> where.viewport().toPx(new Point(70, 0)));
        pressMouse(where, from);
        robot.moveMouse(where, awt(from.towards(to, 0.5)));
        robot.moveMouse(where, awt(to));
        releaseMouse();
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
    void showsTheDimensionsAtATypedStation() {
        frame.toggleButton("tab Cross-section").click();
        frame.textBox("place, from the throat").deleteText().enterText("1 in\n");
        assertThat(frame.textBox("cross-section sizes").text())
                .contains("knife 3.5 mm thick", "air over the knife 0.8 mm");
        frame.menuItemWithPath("View", "Sizes in inches").click();
        assertThat(frame.textBox("cross-section sizes").text())
                .contains("knife 9/64 in thick")
                .doesNotContain(" mm");
    }

    @Test
    void drawsTheKnifeHoldsItAndMovesItByKeys() {
        frame.toggleButton("tab Test draw").click();
        JButton play = frame.button("play").target();
        JSlider slider = frame.slider("drawn").target();
        AtomicReference<String> textOnTheWay = new AtomicReference<>();
        // Clicks from within the animation: it may be over before another thread has seen it run.
        execute(() -> slider.addChangeListener(e -> {
            if (slider.getValue() > 100 && textOnTheWay.get() == null) {
                textOnTheWay.set(play.getText());
                play.doClick();
            }
        }));
        frame.button("play").click();
        await("the knife to move", () -> textOnTheWay.get() != null);
        assertThat(textOnTheWay).hasValue("Hold");
        frame.button("play").requireText("Draw");
        robot.focus(slider);
        press(KeyEvent.VK_HOME);
        assertThat(execute(slider::getValue)).isZero();
        assertThat(frame.textBox("draw told").text()).startsWith("Drawn 0.0 mm: edge to stitch");
        press(KeyEvent.VK_END);
        assertThat(frame.textBox("draw told").text()).contains("the edge is out");
    }

    @Test
    void listsTheHardwareOfAStrapWithItsPunch() {
        execute(() -> window.model()
                .change(job -> job.withSpec(
                        job.spec().withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4)))));
        frame.toggleButton("tab Hardware").click();
        // The table is shown once the plan is there.
        JTable needed = robot.finder().findByName("hardware needed", JTable.class, false);
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
