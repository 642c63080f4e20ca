package weltwright.app.gui.leather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JDialog;
import javax.swing.JToggleButton;
import org.assertj.swing.fixture.DialogFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.widget.WrappedText;
import weltwright.geometry.Point;
import weltwright.hide.LeatherScene;
import weltwright.image.Photo;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;

/** Puts the drawn offcut, whose outline is known, on the shelf by mouse and keys on a display. */
class HideDialogTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    private DialogFixture openDialog() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Leather").click();
        robot.waitForIdle();
        frame.button("add from photo").click();
        return dialog("hide photo");
    }

    private Path write(Photo photo) throws IOException {
        Path file = folder.resolve("offcut.png");
        Files.write(file, photo.bytes());
        return file;
    }

    private void awaitText(String name, String part) {
        WrappedText text = robot.finder().findByName(name, WrappedText.class, false);
        await(part, () -> execute(() -> text.isVisible() && text.getText().contains(part)));
    }

    /** The mat's lines are 10 mm apart; the photo tells no focal length, so that sizes are less exact. */
    @Test
    void putsAnOffcutWithItsHoleOnTheShelf() throws IOException {
        DialogFixture dialog = openDialog();
        drop(((JDialog) dialog.target()).getRootPane(), write(LeatherScene.OFFCUT_ON_MAT));
        dialog.comboBox("ground").selectItem("Ruled mat or paper");
        dialog.textBox("distance of the ground's lines").deleteText().enterText("10 mm\n");
        awaitText("hide state", "1 hole");

        dialog.textBox("name of the leather").enterText("offcut");
        dialog.textBox("kind of leather").enterText("shoulder");
        dialog.textBox("price").enterText("12");
        drawSquare(dialog, "flaw", new Point(-30, -10), 12);
        drawSquare(dialog, "poorer", new Point(0, -30), 12);
        awaitText("hide state", "1 hole");
        dialog.textBox("thickness of the leather").enterText("3 mm");
        execute(() -> dialog.button("save stock").target().doClick());
        await("the dialog to close", () -> !dialog.target().isShowing());

        ShelvedStock item = new StockShelf(state.resolve("stock")).item("offcut");
        Stock stock = item.stock();
        Envelope truth = LeatherScene.OFFCUT.line().polygon().getEnvelopeInternal();
        Envelope found = stock.outline().polygon().getEnvelopeInternal();
        assertThat(found.getWidth()).isCloseTo(truth.getWidth(), within(0.03 * truth.getWidth()));
        assertThat(found.getHeight()).isCloseTo(truth.getHeight(), within(0.03 * truth.getHeight()));
        assertThat(stock.flaws()).hasSize(2);
        assertThat(Math.abs(stock.flaws().get(0).signedAreaMm2()))
                .isCloseTo(LeatherScene.HOLE.line().polygon().getArea(), within(40.0));
        assertThat(Math.abs(stock.flaws().get(1).signedAreaMm2())).isCloseTo(24 * 24, within(60.0));
        assertThat(stock.poorer()).hasSize(1);
        assertThat(stock.thicknessMm()).isEqualTo(OptionalDouble.of(3));
        assertThat(item.kind()).isEqualTo("shoulder");
        assertThat(item.price()).isPresent();
        assertThat(job().cutting().stocks()).containsExactly("offcut");
    }

    @Test
    void takesAnOutlineThatIsDrawnByHandAndATypedFocalLength() throws IOException {
        DialogFixture dialog = openDialog();
        dialog.textBox("bar across the sheet").requireVisible();
        dialog.textBox("focal length in 35 mm terms").enterText("28\n");
        drop(((JDialog) dialog.target()).getRootPane(), write(LeatherScene.OFFCUT_ON_MAT));
        dialog.comboBox("ground").selectItem("Ruled mat or paper");
        dialog.textBox("distance of the ground's lines").deleteText().enterText("10 mm\n");
        awaitText("hide state", "1 hole");
        drawSquare(dialog, "outline", new Point(-20, -15), 20);
        WrappedText found = robot.finder().findByName("hide state", WrappedText.class, false);
        await(
                "a square of 40 mm",
                () -> execute(() -> found.getText().matches("(39|40|41)[.0-9]* × (39|40|41)[.0-9]* mm.*")));
    }

    /** Draws round a square about a place of the ground, in mm. */
    private void drawSquare(DialogFixture dialog, String tool, Point middle, double half) {
        JToggleButton button = dialog.toggleButton("tool " + tool).target();
        execute(() -> button.doClick());
        HideCanvas canvas = (HideCanvas) robot.finder().findByName("hide drawing");
        List<Point> corners = LeatherScene.CAMERA
                .pixels(List.of(
                        middle.plus(new Point(-half, -half)),
                        middle.plus(new Point(half, -half)),
                        middle.plus(new Point(half, half)),
                        middle.plus(new Point(-half, half))))
                .stream()
                .map(px -> execute(() -> canvas.viewport().toPx(canvas.toMm(px))))
                .toList();
        pressMouse(canvas, corners.get(0));
        for (int i = 1; i < corners.size(); i++) {
            for (double t = 0.5; t <= 1; t += 0.5) {
                robot.moveMouse(canvas, awt(corners.get(i - 1).towards(corners.get(i), t)));
            }
        }
        releaseMouse();
    }

    @Test
    void tellsWhatIsMissingOrWrong() throws IOException {
        DialogFixture dialog = openDialog();
        assertThat(dialog.button("save stock").target().isEnabled()).isFalse();
        Path text = folder.resolve("notes.jpg");
        Files.writeString(text, "no photo");
        pressButton(dialog, "choose hide photo");
        choose(text);
        awaitText("hide error", "notes.jpg");
        pressButton(dialog, "choose hide photo");
        choose(write(LeatherScene.CAMERA.photo((at, footprint) -> 130, 2.2)));
        awaitText("hide error", ".");
        assertThat(dialog.button("save stock").target().isEnabled()).isFalse();
        JDialog window = (JDialog) dialog.target();
        pressButton(dialog, "cancel stock");
        await("the dialog to close", () -> !window.isShowing());
        assertThat(new StockShelf(state.resolve("stock")).all()).isEmpty();
    }
}
