package weltwright.app.gui.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import org.assertj.swing.core.MouseButton;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.widget.WrappedText;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.trace.ground.GroundChoice;

/** A photo that is opened: what the window asks and says of it, and corners set on it. */
class PhotoPanelTest extends MainWindowTestBase {
    private static final Path SCENES = Path.of("src/test/resources/scenes");

    /** The lines are drawn and asked for; nothing is filled in. */
    @Test
    void asksHowFarApartLinesAreAndTakesTheAnswer() {
        open("paring-graph");
        await("the question", () -> shown("photo question").contains("how far apart"));
        frame.comboBox("ground").requireSelection("Ruled mat or paper");
        frame.textBox("distance of the ground's lines").requireText("");
        assertThat(ground()).isEqualTo(new GroundChoice.Any());

        frame.textBox("distance of the ground's lines").enterText("5 mm\n");
        assertThat(ground()).isEqualTo(new GroundChoice.Ruled(5));
        await("the advice", () -> shown("photo advice").contains("good to trace"));
        assertThat(shown("photo question")).isEmpty();
    }

    @Test
    void saysWhatWouldMakeABetterPhotoBeforeTracing() {
        open("skinner-sheet-letter");
        await("the advice", () -> shown("photo advice").contains("above the ground"));
        assertThat(job().trace()).isEmpty();
    }

    @Test
    void cornersArePulledNudgedAndTakenBack() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        List<Point> before = rectangle().corners();
        assertThat(before).hasSize(4);
        PhotoCanvas view = (PhotoCanvas) robot.finder().findByName("photo drawing");
        await("the photo looked at", this::isLookedAt);

        pull(view, view.toMm(before.get(1)), new Point(40, 30));
        List<Point> pulled = rectangle().corners();
        assertThat(pulled.get(1).x() - before.get(1).x()).isCloseTo(40, within(6.0));
        assertThat(pulled.get(1).y() - before.get(1).y()).isCloseTo(30, within(6.0));
        assertThat(pulled.get(0)).isEqualTo(before.get(0));

        press(KeyEvent.VK_3);
        press(KeyEvent.VK_LEFT);
        press(KeyEvent.VK_LEFT);
        press(KeyEvent.VK_SHIFT, KeyEvent.VK_DOWN);
        Point nudged = rectangle().corners().get(2).minus(pulled.get(2));
        assertThat(nudged.x()).isCloseTo(-2, within(1e-9));
        assertThat(nudged.y()).isCloseTo(10, within(1e-9));

        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(rectangle().corners()).isEqualTo(pulled);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(rectangle().corners()).isEqualTo(before);
    }

    /** The words above the photo take other lines while a corner is held. */
    @Test
    void aHeldCornerStaysUnderTheMouse() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        PhotoCanvas view = (PhotoCanvas) robot.finder().findByName("photo drawing");
        await("the photo looked at", this::isLookedAt);
        Point corner = view.toMm(rectangle().corners().get(1));
        Point held = execute(() -> view.viewport().toPx(corner));
        robot.moveMouse(view, awt(held));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        robot.waitForIdle();
        Point before = execute(() -> onScreen(view, corner));

        execute(() -> text("photo question").say("One line.\nAnother.\nA third."));
        robot.waitForIdle();
        assertThat(execute(() -> onScreen(view, corner)).distance(before)).isLessThan(1e-6);
        letGo();
        assertThat(execute(() -> view.viewport().toPx(corner)).distance(held)).isGreaterThan(1);
    }

    @Test
    void theSizeOfTheRectangleIsTyped() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        frame.textBox("width of the rectangle").deleteText().enterText("12 in\n");
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(rectangle().widthMm()).isCloseTo(12 * 25.4, within(1e-9));
    }

    /** Its corners are places in the photo before. */
    @Test
    void anotherPhotoBringsNoCornersAlong() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        open("paring-paper-a4");
        assertThat(ground()).isEqualTo(new GroundChoice.Any());
    }

    private void open(String scene) {
        Photo photo = Photo.read(SCENES.resolve(scene + ".jpg"));
        execute(() -> window.bench().change(job -> job.withPhoto(photo)));
        robot.waitForIdle();
    }

    /** Moves what is at a place of the drawing by so many pixels of the photo, y down. */
    private void pull(PhotoCanvas view, Point fromMm, Point byPhotoPx) {
        double mmPerPx =
                BackgroundImage.TAKEN_WIDTH_MM / job().photo().orElseThrow().widthPx();
        Point toMm = fromMm.plus(new Point(byPhotoPx.x() * mmPerPx, -byPhotoPx.y() * mmPerPx));
        Point from = execute(() -> view.viewport().toPx(fromMm));
        Point to = execute(() -> view.viewport().toPx(toMm));
        robot.moveMouse(view, awt(from));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        robot.moveMouse(view, awt(from.towards(to, 0.5)));
        robot.moveMouse(view, awt(to));
        letGo();
    }

    private GroundChoice ground() {
        return job().settings().ground();
    }

    private GroundChoice.Rectangle rectangle() {
        return (GroundChoice.Rectangle) ground();
    }

    private static Point onScreen(PhotoCanvas view, Point mm) {
        Point px = view.viewport().toPx(mm);
        return px.plus(new Point(view.getLocationOnScreen().x, view.getLocationOnScreen().y));
    }

    private boolean isLookedAt() {
        return !shown("photo advice").isEmpty() && !shown("photo advice").startsWith("Looking");
    }

    private String shown(String name) {
        return execute(() -> text(name).getText());
    }

    private WrappedText text(String name) {
        return robot.finder().findByName(name, WrappedText.class, false);
    }
}
