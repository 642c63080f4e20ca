package weltwright.app.gui.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.widget.WrappedText;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.trace.ground.GroundChoice;

/** Questions and advice on a photo that is opened, and corners that are set on it. */
class PhotoPanelTest extends MainWindowTestBase {
    private static final Path SCENES = Path.of("src/test/resources/scenes");

    @Test
    void asksForTheDistanceOfTheLinesAndProposesNone() {
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
    void advisesOnABetterPhotoBeforeTracing() {
        open("skinner-sheet-letter");
        frame.toggleButton("open findings").click();
        await("the advice", () -> execute(() -> findings().contains("above the ground")));
        assertThat(job().trace()).isEmpty();
    }

    @Test
    void movesCornersByMouseAndKeysAndUndoesIt() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        List<Point> before = rectangle().corners();
        assertThat(before).hasSize(4);
        PhotoCanvas view = (PhotoCanvas) robot.finder().findByName("photo drawing");
        await("the assessment of the photo", this::isAssessed);

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

    /** The texts above the photo change their height during the drag. */
    @Test
    void aDraggedCornerStaysUnderTheMouse() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        PhotoCanvas view = (PhotoCanvas) robot.finder().findByName("photo drawing");
        await("the assessment of the photo", this::isAssessed);
        Point corner = view.toMm(rectangle().corners().get(1));
        Point held = execute(() -> view.viewport().toPx(corner));
        pressMouse(view, held);
        Point before = execute(() -> onScreen(view, corner));

        execute(() -> text("photo question").showText("One line.\nAnother.\nA third."));
        robot.waitForIdle();
        assertThat(execute(() -> onScreen(view, corner)).distance(before)).isLessThan(1e-6);
        releaseMouse();
        assertThat(execute(() -> view.viewport().toPx(corner)).distance(held)).isGreaterThan(1);
    }

    @Test
    void takesTheSizeOfTheRectangle() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        frame.textBox("width of the rectangle").deleteText().enterText("12 in\n");
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(rectangle().widthMm()).isCloseTo(12 * 25.4, within(1e-9));
    }

    /** The corners are points of the photo before. */
    @Test
    void dropsTheCornersWithAnotherPhoto() {
        open("tanto-paper-a4");
        frame.comboBox("ground").selectItem("Corners by hand");
        open("paring-paper-a4");
        assertThat(ground()).isEqualTo(new GroundChoice.Any());
    }

    private void open(String scene) {
        Photo photo = Photo.read(SCENES.resolve(scene + ".jpg"));
        execute(() -> window.model().change(job -> job.withPhoto(photo)));
        robot.waitForIdle();
    }

    /** Drags what is at a point of the drawing by px of the photo, y down. */
    private void pull(PhotoCanvas view, Point fromMm, Point byPhotoPx) {
        double mmPerPx =
                BackgroundImage.AS_TAKEN_WIDTH_MM / job().photo().orElseThrow().widthPx();
        Point toMm = fromMm.plus(new Point(byPhotoPx.x() * mmPerPx, -byPhotoPx.y() * mmPerPx));
        Point from = execute(() -> view.viewport().toPx(fromMm));
        Point to = execute(() -> view.viewport().toPx(toMm));
        pressMouse(view, from);
        robot.moveMouse(view, awt(from.towards(to, 0.5)));
        robot.moveMouse(view, awt(to));
        releaseMouse();
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

    /**
     * The texts of the assessment before remain while the photo is assessed again, so they do not show that it is done.
     */
    private boolean isAssessed() {
        return execute(() -> robot.finder().findByType(PhotoPanel.class).isAssessed());
    }

    private String shown(String name) {
        return execute(() -> text(name).getText());
    }

    private WrappedText text(String name) {
        return robot.finder().findByName(name, WrappedText.class, false);
    }
}
