package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.swing.JFileChooser;
import org.assertj.swing.finder.JFileChooserFinder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.image.Photo;

/** A photo that cannot be traced: the window says why and offers what can be done. */
class RefusedPhotoTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    @BeforeEach
    void refuseAPhotoWithoutAGround() throws IOException {
        BufferedImage blank = new BufferedImage(1200, 900, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = blank.createGraphics();
        g.setColor(new Color(120, 130, 125));
        g.fillRect(0, 0, 1200, 900);
        g.dispose();
        Path file = folder.resolve("blank.png");
        ImageIO.write(blank, "png", file.toFile());
        open(OutlinedJobs.measured().withPhoto(Photo.read(file)));
        frame.button("onward").requireText("Find the outline").click();
        awaitNextStep("Choose the ground");
    }

    @Test
    void saysWhyInsteadOfSearchingOn() {
        assertThat(frame.textBox("next step").text())
                .doesNotContain("Finding the outline")
                .isNotBlank();
        assertThat(job().silhouette()).isEmpty();
    }

    @Test
    void leadsToTheChoiceOfTheGround() {
        frame.button("onward").click();
        awaitFocus("ground");
        frame.comboBox("ground").selectItem("The printed sheet");
        awaitNextStep("Find the outline");
    }

    @Test
    void setsCornersOnThePhoto() {
        frame.button("onward Set corners").click();
        robot.waitForIdle();
        assertThat(job().settings().ground().asRectangle()).isPresent();
        awaitFocus("photo drawing");
        awaitNextStep("Find the outline");
    }

    @Test
    void opensAnotherPhoto() {
        frame.button("onward Another photo…").click();
        JFileChooser chooser = JFileChooserFinder.findFileChooser().using(robot).target();
        execute(() -> {
            chooser.setSelectedFile(Path.of("sample-images", "drop-point.jpg").toFile());
            chooser.approveSelection();
        });
        await("the photo", () -> job().photo().orElseThrow().name().equals("drop-point.jpg"));
        awaitNextStep("Find the outline");
    }
}
