package weltwright.app.gui.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Color;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JList;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.output.PageFrame;
import weltwright.output.PaperSize;
import weltwright.units.PrintScale;

/** The pages of the paper stage are those that are printed. */
class PaperPreviewTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    private JList<?> strip;
    private PagePreviewCanvas canvas;

    @BeforeEach
    void openTheJob() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Paper").click();
        frame.comboBox("paper size").selectItem("A4");
        strip = frame.list("page strip").target();
        canvas = robot.finder().findByName("page preview", PagePreviewCanvas.class);
        await("the pages", () -> execute(() -> strip.getModel().getSize() > 0 && canvas.isDrawn()));
    }

    @Test
    void showsAsManyPagesAsTheSavedFileHas() throws IOException {
        frame.button("save pdf").click();
        Path file = folder.resolve("pattern.pdf");
        choose(file);
        await("the file", () -> Files.exists(file));
        try (PDDocument saved = Loader.loadPDF(file.toFile())) {
            assertThat(execute(() -> strip.getModel().getSize())).isEqualTo(saved.getNumberOfPages());
            assertThat(frame.textBox("pages in all").text()).startsWith(saved.getNumberOfPages() + " pages: ");
        }
    }

    /** A screen of a pitch that was measured shows the page's 50 mm square with 50 mm. */
    @Test
    void showsTheSquareAtActualSizeOnceItWasMeasuredOnTheScreen() {
        frame.button("actual size").click();
        double told = execute(() -> canvas.viewport().pxPerMm());
        type("square on the screen", "40");
        frame.textBox("square on the screen").requireText("50 mm");
        double pxPerMm = execute(() -> canvas.viewport().pxPerMm());
        // 50 mm at the told pitch measured 40 mm: a mm has 50/40 as many pixels.
        assertThat(pxPerMm).isCloseTo(told * 50 / 40, within(1e-6));

        await("the page at this zoom", () -> execute(canvas::isDrawn));
        robot.waitForIdle();
        BufferedImage image = execute(() -> {
            BufferedImage painted =
                    new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
            canvas.paint(painted.createGraphics());
            return painted;
        });
        Point corner = PaperSize.A4.frame(PrintScale.TRUE).squareCorner();
        // A row through the free half of the square: its left and right side are the outermost dark pixels about it.
        Point row = execute(() -> canvas.viewport().toPx(corner.plus(new Point(0, 2))));
        double outside = 0.5 * pxPerMm;
        List<Integer> dark = new ArrayList<>();
        for (int x = (int) (row.x() - outside); x <= row.x() + PageFrame.SQUARE_MM * pxPerMm + outside; x++) {
            if (new Color(image.getRGB(x, (int) row.y())).getRed() < 160) {
                dark.add(x);
            }
        }
        assertThat((dark.get(dark.size() - 1) - dark.get(0)) / pxPerMm).isCloseTo(50, within(2 / pxPerMm));
    }

    @Test
    void turnsPagesByKeysAndByTheStrip() {
        robot.focus(canvas);
        press(KeyEvent.VK_PAGE_DOWN);
        assertThat(execute(strip::getSelectedIndex)).isEqualTo(1);
        assertThat(frame.label("page title").text()).startsWith("Page 2 of ");
        robot.focus(strip);
        press(KeyEvent.VK_END);
        assertThat(frame.label("page title").text()).endsWith("bench card");
        await("the card", () -> execute(canvas::isDrawn));
    }

    @Test
    void tellsTheCorrectionOfThePrinter() {
        assertThat(frame.textBox("correction").text()).isEqualTo("The next print is not corrected.");
        type("width of the printed square", "49.5");
        // 50 / 49.5 = 1.0101
        assertThat(frame.textBox("correction").text()).contains("1.0 % larger from side to side", "no larger from top");
        // The guide: more than 1.5 mm off is "fit to page".
        type("height of the printed square", "48.6");
        assertThat(frame.textBox("correction").text()).doesNotContain("fit to page");
        type("height of the printed square", "48.4");
        assertThat(frame.textBox("correction").text()).contains("fit to page");
        type("height of the printed square", "48");
        // 50 / 48 = 1.0417: no printer is so far off
        assertThat(frame.textBox("correction").text()).contains("4.2 % larger from top", "fit to page");
    }
}
