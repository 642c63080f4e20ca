package weltwright.app.gui.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.util.stream.Stream;
import org.assertj.swing.core.MouseButton;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.outline.OutlineCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.units.MeasureUnit;

/** Panning, zooming, rulers, the tape, the loupe and before and after, in the outline's drawing. */
class CanvasToolsTest extends MainWindowTestBase {
    private static final Point NODE = new Point(80, 12);
    private OutlineCanvas view;

    @BeforeEach
    void openTheJob() {
        open(OutlinedJobs.outlined());
        view = (OutlineCanvas) robot.finder().findByName("outline drawing");
    }

    @Test
    void theTapeMeasuresFromPointToPoint() {
        robot.focus(view);
        press(KeyEvent.VK_L);
        frame.toggleButton("tape").requireSelected();
        drag(view, new Point(0, 0), new Point(30, 40));
        double pxMm = 1 / execute(() -> view.viewport().pxPerMm());
        // 3 : 4 : 5
        assertThat(mm(view)).isCloseTo(50, within(2 * pxMm));
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
        press(KeyEvent.VK_L);
        frame.toggleButton("tape").requireNotSelected();
    }

    @Test
    void theWheelZoomsAboutTheMouseAndKeysPan() {
        Viewport fitted = execute(() -> view.viewport());
        robot.moveMouse(view, 200, 150);
        robot.rotateMouseWheel(view, -2);
        robot.waitForIdle();
        Viewport zoomed = execute(() -> view.viewport());
        assertThat(zoomed.pxPerMm()).isGreaterThan(fitted.pxPerMm());
        robot.focus(view);
        press(KeyEvent.VK_LEFT);
        assertThat(execute(() -> view.viewport()).centre().x())
                .isLessThan(zoomed.centre().x());
        press(KeyEvent.VK_0);
        assertThat(execute(() -> view.viewport())).isEqualTo(fitted);
    }

    @Test
    void theMiddleButtonPansWithAnyTool() {
        frame.toggleButton("tool Redraw").click();
        Viewport fitted = execute(() -> view.viewport());
        robot.moveMouse(view, 300, 200);
        robot.pressMouse(MouseButton.MIDDLE_BUTTON);
        robot.moveMouse(view, 340, 200);
        robot.releaseMouseButtons();
        robot.waitForIdle();
        assertThat(execute(() -> view.viewport()).toPx(new Point(0, 0)).x())
                .isCloseTo(fitted.toPx(new Point(0, 0)).x() + 40, within(1.0));
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void aLoupeStandsBesideADraggedNode() {
        frame.toggleButton("tool Points").click();
        Point px = execute(() -> view.viewport().toPx(NODE));
        BufferedImage before = painted();
        pressMouse(view, px);
        robot.moveMouse(view, awt(px.plus(new Point(10, -10))));
        Point held = px.plus(new Point(20, -20));
        robot.moveMouse(view, awt(held));
        // The loupe's middle lies 112 px to a side of the mouse and 112 px above or below it.
        await("the loupe", () -> {
            BufferedImage now = painted();
            return Stream.of(new Point(112, -112), new Point(112, 112), new Point(-112, -112), new Point(-112, 112))
                    .anyMatch(away -> changed(before, now, held.plus(away)));
        });
        releaseMouse();
    }

    @Test
    void theOutlineBeforeTheLastChangeIsShownWhileAKeyIsHeld() {
        frame.toggleButton("tool Points").click();
        robot.focus(view);
        press(KeyEvent.VK_ADD); // so that the drawing keeps its place
        BufferedImage before = painted();
        drag(view, NODE, new Point(80, 18));
        robot.focus(view);
        Point onOld = execute(() -> view.viewport().toPx(new Point(80, 12)));
        press(KeyEvent.VK_ESCAPE);
        BufferedImage changed = painted();
        assertThat(changed(before, changed, onOld)).isTrue();
        robot.pressKey(KeyEvent.VK_V);
        await("the outline before", () -> !changed(before, painted(), onOld));
        robot.releaseKey(KeyEvent.VK_V);
        await("the outline now", () -> !changed(changed, painted(), onOld));
    }

    @Test
    void rulersHaveRoundStepsInTheUnit() {
        assertThat(RulerPainter.stepMm(4, MeasureUnit.MILLIMETRE)).isEqualTo(20);
        // A quarter of an inch at 12 px for a mm is 76 px wide, an eighth 38 px.
        assertThat(RulerPainter.stepMm(12, MeasureUnit.INCH)).isEqualTo(25.4 / 4);
    }

    private static double mm(DrawingCanvas canvas) {
        return execute(() -> canvas.tapeMm().orElseThrow());
    }

    private BufferedImage painted() {
        return execute(() -> {
            BufferedImage image = new BufferedImage(view.getWidth(), view.getHeight(), BufferedImage.TYPE_INT_RGB);
            view.paint(image.getGraphics());
            return image;
        });
    }

    /** Returns whether two paintings differ within 3 px of a place. */
    private static boolean changed(BufferedImage one, BufferedImage other, Point px) {
        for (int y = -3; y <= 3; y++) {
            for (int x = -3; x <= 3; x++) {
                int atX = (int) px.x() + x;
                int atY = (int) px.y() + y;
                if (atX >= 0
                        && atY >= 0
                        && atX < one.getWidth()
                        && atY < one.getHeight()
                        && one.getRGB(atX, atY) != other.getRGB(atX, atY)) {
                    return true;
                }
            }
        }
        return false;
    }
}
