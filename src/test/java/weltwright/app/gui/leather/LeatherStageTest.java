package weltwright.app.gui.leather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JToggleButton;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.assertj.swing.fixture.DialogFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.job.CuttingPlan;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PriceFile;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;

/** Lays a job out on leather, by mouse and keys on a display. */
class LeatherStageTest extends MainWindowTestBase {
    /** 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
    private static final double INCH = 25.4;

    private static final Pattern COUNT = Pattern.compile("^(\\d+) sheath");

    @TempDir
    private Path folder;

    private StockShelf shelf() {
        return new StockShelf(state.resolve("stock"));
    }

    private void shelve(String name, double lengthMm, double widthMm) {
        shelf().add(Stock.panel(name, lengthMm, widthMm, OptionalDouble.empty()));
    }

    private void openLeather(Job job) {
        open(job);
        awaitPattern();
        frame.toggleButton("stage Leather").click();
        robot.waitForIdle();
    }

    private static Job onPanel(int count) {
        return OutlinedJobs.outlined()
                .withCutting(CuttingPlan.NONE.withStocks(List.of("panel")).withCount(OptionalInt.of(count)));
    }

    private String stateText() {
        JLabel label = robot.finder().findByName("layout state", JLabel.class, false);
        return execute(label::getText);
    }

    private LayoutCanvas canvas() {
        return (LayoutCanvas) robot.finder().findByName("layout drawing");
    }

    /** Waits for a layout of at least so many sheaths. */
    private void awaitLayout(int sheaths) {
        await(
                sheaths + " sheaths",
                () -> execute(() -> {
                    String words = canvas().getAccessibleContext().getAccessibleDescription();
                    Matcher count = COUNT.matcher(words == null ? "" : words);
                    return count.find() && Integer.parseInt(count.group(1)) >= sheaths;
                }));
    }

    /** Stops the search as soon as there is a layout, so that a test does not wait for a better one. */
    private void stopWith(int sheaths) {
        awaitLayout(sheaths);
        JButton hold = robot.finder().findByName("hold layout", JButton.class, false);
        execute(() -> {
            if (hold.isVisible() && hold.getText().equals("Stop")) {
                hold.doClick();
            }
        });
        robot.waitForIdle();
    }

    @Test
    void laysOutOnAPanelThatWasPutOnTheShelf() {
        openLeather(OutlinedJobs.outlined());
        frame.button("add panel").click();
        DialogFixture editor = dialog("stock editor");
        editor.textBox("name of the leather").enterText("shoulder");
        editor.textBox("length of the leather").enterText("24 in");
        editor.textBox("width of the leather").enterText("12 in");
        editor.textBox("kind of leather").enterText("vegetable tanned");
        editor.textBox("price").enterText("30");
        pressButton(editor, "save stock");
        await("the leather", () -> job().cutting().stocks().contains("shoulder"));

        ShelvedStock shelved = shelf().contents().items().get(0);
        Envelope extent = shelved.stock().outline().polygon().getEnvelopeInternal();
        assertThat(extent.getWidth()).isCloseTo(24 * INCH, within(1e-9));
        assertThat(extent.getHeight()).isCloseTo(12 * INCH, within(1e-9));
        assertThat(shelved.kind()).isEqualTo("vegetable tanned");
        assertThat(shelved.price().orElseThrow().amount()).isEqualByComparingTo(new BigDecimal("30"));
        frame.toggleButton("stock shoulder").requireSelected();
        assertThat(job().cutting().stocks()).containsExactly("shoulder");
        awaitLayout(1);
    }

    @Test
    void refusesAPanelWithoutAName() {
        openLeather(OutlinedJobs.outlined());
        frame.button("add panel").click();
        DialogFixture editor = dialog("stock editor");
        editor.textBox("length of the leather").enterText("600");
        pressButton(editor, "save stock");
        robot.waitForIdle();

        assertThat(shelf().all()).isEmpty();
        pressButton(editor, "cancel stock");
    }

    @Test
    void dragsAPieceToAFreePlaceAndUndoesIt() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        CuttingPlan before = job().cutting();

        dragPiece(0, new Point(150, 60));

        CuttingPlan moved = job().cutting();
        assertThat(moved.byHand()).hasSize(1);
        assertThat(stateText()).isEqualTo("Moved by hand");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job().cutting()).isEqualTo(before);
        awaitLayout(1);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        assertThat(job().cutting()).isEqualTo(moved);
    }

    @Test
    void refusesAPlaceOutsideOfTheLeather() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        CuttingPlan before = job().cutting();

        dragPiece(0, new Point(0, 600));

        assertThat(job().cutting()).isEqualTo(before);
        assertThat(frame.textBox("layout remarks").text()).contains("would lie over something");
    }

    /** Moves a piece by its middle. */
    private void dragPiece(int piece, Point by) {
        LayoutCanvas canvas = canvas();
        Point middle = execute(() -> canvas.middleOf(0, piece));
        Point from = execute(() -> canvas.viewport().toPx(middle));
        Point to = execute(() -> canvas.viewport().toPx(middle.plus(by)));
        pressMouse(canvas, from);
        for (double t = 0.25; t <= 1; t += 0.25) {
            robot.moveMouse(canvas, awt(from.towards(to, t)));
        }
        releaseMouse();
    }

    @Test
    void movesAndTurnsByKeys() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        robot.focus(canvas());
        press(KeyEvent.VK_N);
        for (int i = 0; i < 3; i++) {
            press(KeyEvent.VK_SHIFT, KeyEvent.VK_RIGHT);
        }
        CuttingPlan pushed = job().cutting();
        assertThat(pushed.byHand()).hasSize(1);
        press(KeyEvent.VK_R);
        double turn = job().cutting().byHand().get(0).pieces().get(0).motion().angleRad()
                - pushed.byHand().get(0).pieces().get(0).motion().angleRad();
        assertThat(Math.abs(Math.IEEEremainder(turn, Math.PI / 2))).isLessThan(Math.toRadians(15.1));
        assertThat(Math.abs(Math.IEEEremainder(turn, 2 * Math.PI))).isGreaterThan(1);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job().cutting().byHand()).isEmpty();
    }

    @Test
    void keepsWhatWasMovedInTheJobsFile() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        dragPiece(0, new Point(150, 60));
        Job moved = job();
        Path file = folder.resolve("moved.wwj");
        JobFile.write(moved, file);

        open(OutlinedJobs.empty());
        openLeather(JobFile.read(file));
        await("the layout by hand", () -> stateText().equals("Moved by hand"));
        assertThat(job().cutting()).isEqualTo(moved.cutting());
    }

    @Test
    void laysOutAnewWhenTheSheathChanges() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        execute(() -> window.model()
                .change(job -> job.withSpec(
                        job.spec().withStitching(job.spec().stitching().withMarginMm(6)))));
        assertThat(execute(() -> canvas().isEmpty())).isTrue();
        awaitLayout(1);
    }

    @Test
    void savesTheLayoutAndAQuote() throws IOException {
        shelve("panel", 1000, 500);
        PriceFile.write(
                PriceFile.blank().withLabourPerHour(new BigDecimal("40")).withTaxPercent(new BigDecimal("20")),
                state.resolve("prices.json"));
        openLeather(onPanel(2));
        stopWith(2);
        Path layout = folder.resolve("layout.pdf");
        frame.button("save layout").click();
        choose(layout);
        await("the layout's PDF", () -> Files.exists(layout));
        assertThat(text(layout)).contains("Layout on panel", "2 × Trial knife");
        for (String format : List.of("svg", "dxf")) {
            Path drawing = folder.resolve("layout." + format);
            frame.button("save layout " + format).click();
            choose(drawing);
            await("the layout's " + format, () -> Files.exists(drawing));
            assertThat(drawing).content().contains(format.equals("svg") ? "mm\"" : "$INSUNITS");
        }

        await(
                "the cost",
                () -> execute(() -> robot.finder()
                        .findByName("save quote", JButton.class, false)
                        .isEnabled()));
        Path quote = folder.resolve("quote.pdf");
        frame.button("save quote").click();
        choose(quote);
        await("the quote", () -> Files.exists(quote));
        String price = frame.label("cost gross").text();
        assertThat(text(quote)).contains("To pay", price);
    }

    private static String text(Path file) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            return new PDFTextStripper().getText(pdf);
        }
    }

    /** What is left of a panel is as wide as before, and as long as it was less what is used. */
    @Test
    void cutsFromTheShelfAndUndoesIt() {
        shelve("panel", 1000, 500);
        openLeather(onPanel(1));
        stopWith(1);
        frame.button("cut this").click();
        await("the cut", () -> job().cutting().stocks().isEmpty());

        Envelope rest = shelf().named("panel").outline().polygon().getEnvelopeInternal();
        assertThat(rest.getHeight()).isCloseTo(500, within(1e-6));
        assertThat(rest.getWidth()).isBetween(300.0, 990.0);
        frame.button("undo cut").click();
        await("the whole panel", () -> job().cutting().stocks().equals(List.of("panel")));
        Envelope whole = shelf().named("panel").outline().polygon().getEnvelopeInternal();
        assertThat(whole.getWidth()).isCloseTo(1000, within(1e-6));
    }

    @Test
    void aDamagedFileOfTheShelfIsNamedAndHidesNoOtherStock() throws IOException {
        shelve("panel", 1000, 500);
        Files.writeString(state.resolve("stock").resolve("belly.json"), "{\"format\": \"no sto");
        openLeather(onPanel(1));
        stopWith(1);
        assertThat(frame.textBox("unreadable stock").text()).contains("belly.json");
        JToggleButton stage = robot.finder().findByName("stage Leather", JToggleButton.class);
        await(
                "the stage's tick",
                () -> execute(() -> stage.getAccessibleContext().getAccessibleName())
                        .endsWith("done"));
    }

    @Test
    void saysWhyNothingFits() {
        shelve("panel", 60, 50);
        openLeather(onPanel(1));
        await(
                "the reason",
                () -> execute(
                        () -> robot.finder().findByName("layout remarks", false).isShowing()));
        assertThat(frame.textBox("layout remarks").text()).contains("room was found on panel for 0");
        JToggleButton stage = robot.finder().findByName("stage Leather", JToggleButton.class);
        assertThat(execute(() -> stage.getAccessibleContext().getAccessibleName()))
                .endsWith("look at it");
    }
}
