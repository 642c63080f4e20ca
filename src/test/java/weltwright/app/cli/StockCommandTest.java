package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.ground.RenderedGround;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.StockShelf;
import weltwright.job.TestJobs;
import weltwright.layout.stock.Stock;

class StockCommandTest {
    @TempDir
    Path folder;

    private StockShelf shelf;

    @BeforeEach
    void emptyShelf() {
        shelf = new StockShelf(folder.resolve("stock"));
    }

    private CommandLineRun run(Object... args) {
        return CommandLineRun.withShelf(shelf, args);
    }

    @Test
    void putsPanelsAndHidesOnTheShelfAndTakesThemOff() throws Exception {
        Path hide = folder.resolve("hide.json");
        Files.writeString(
                hide,
                "{\"outline\": [[0,0],[500,0],[400,300],[0,300]], \"flaws\": [[[10,10],[30,10],[30,30],[10,30]]]}");

        run("stock", "shoulder", "--size", "12x24in", "--thickness", "8oz").succeeds();
        run("stock", "Hälfte 1", "--outline", hide).succeeds();

        // 12 by 24 in are 1858 cm²; the hide is a trapezium of 1350 cm² with a flaw of 4 cm².
        assertThat(run("stock").succeeds().out().lines())
                .containsExactly(
                        "Hälfte 1: 500 mm × 300 mm, 1346 cm²",
                        "shoulder: 609.6 mm × 304.8 mm, 3.18 mm thick, 1858 cm²");
        run("stock", "shoulder", "--remove").succeeds();
        assertThat(run("stock").succeeds().out().lines()).hasSize(1);
    }

    @Test
    void aDamagedFileHidesNoOtherStock() throws Exception {
        run("stock", "shoulder", "--size", "12x24in").succeeds();
        run("stock", "bend", "--size", "300x600mm").succeeds();
        Files.writeString(folder.resolve("stock").resolve("belly.json"), "{\"format\": \"no sto");
        Files.writeString(folder.resolve("stock").resolve("flank.json"), "null");

        assertThat(shelf.all()).extracting(Stock::name).containsExactly("bend", "shoulder");
        CommandLineRun list = run("stock");
        assertThat(list.code()).isZero();
        assertThat(list.out().lines()).hasSize(2);
        assertThat(list.err()).contains("belly.json", "flank.json").doesNotContain("bend.json");
    }

    @Test
    void aCutIsWrittenDownAndUndone() {
        Path job = folder.resolve("anouk.wwj");
        JobFile.write(
                Job.begin(LocalDate.of(2024, 5, 6)).assumingUsualThicknesses().withSilhouette(TestJobs.silhouette()),
                job);
        run("stock", "shoulder", "--size", "300x900mm").succeeds();

        CommandLineRun cut = run(
                        "layout",
                        job,
                        "--stock",
                        "shelf:shoulder",
                        "--count",
                        "1",
                        "--passes",
                        "40",
                        "-o",
                        folder.resolve("out"),
                        "--cut")
                .succeeds();

        double used = Double.parseDouble(cut.out().replaceAll("(?s).*Used of the length: ([\\d.]+) mm.*", "$1"));
        var rest = shelf.named("shoulder").outline().polygon().getEnvelopeInternal();
        assertThat(rest.getWidth()).isCloseTo(900 - used, within(0.01));
        assertThat(rest.getHeight()).isEqualTo(300);
        run("stock", "shoulder", "--undo").succeeds();
        assertThat(shelf.named("shoulder").usable().getArea()).isCloseTo(270_000, within(1e-6));
        run("stock", "shoulder", "--undo")
                .fails(CommandLineApplication.USER_ERROR, "Nothing has been cut from \"shoulder\".");
    }

    /** A disc of 60 mm on a mat with lines 10 mm apart, drawn by OpenCV's camera model: 113 cm². */
    @Test
    void putsAnOffcutFromAPhotoOnTheShelf() throws Exception {
        RenderedGround camera = new RenderedGround(1500, 0, 5, 0, 420, 0.7, 2);
        Path photo = folder.resolve("offcut.png");
        Files.write(
                photo,
                camera.photo(
                                (at, footprint) -> {
                                    double part = RenderedGround.cover(at.norm(), 60, footprint);
                                    double line = Math.max(
                                            RenderedGround.cover(
                                                    Math.abs(Math.IEEEremainder(at.x(), 10)), 0.25, footprint),
                                            RenderedGround.cover(
                                                    Math.abs(Math.IEEEremainder(at.y(), 10)), 0.25, footprint));
                                    return part * 35 + (1 - part) * (130 - 70 * line);
                                },
                                2.2)
                        .bytes());

        run(
                        "stock",
                        "offcut",
                        "--photo",
                        photo,
                        "--ground",
                        "ruled:10mm",
                        "--focal-35mm",
                        "43.3",
                        "--flaw-in-photo",
                        "590,440 610,440 610,460 590,460",
                        "--leather-kind",
                        "shoulder, brown",
                        "--price",
                        "12.50",
                        "--price-per",
                        "square_foot")
                .succeeds();

        assertThat(shelf.named("offcut").outline().signedAreaMm2())
                .isCloseTo(Math.PI * 60 * 60, within(0.02 * Math.PI * 60 * 60));
        assertThat(shelf.named("offcut").flaws()).hasSize(1);
        assertThat(run("stock").succeeds().out()).contains(", shoulder, brown, 12.5 per square foot");
    }

    @Test
    void whatIsCutMayLeaveARectangleAndBePrintedTrueToSize() {
        Path job = folder.resolve("anouk.wwj");
        JobFile.write(
                Job.begin(LocalDate.of(2024, 5, 6)).assumingUsualThicknesses().withSilhouette(TestJobs.silhouette()),
                job);
        Path out = folder.resolve("out");
        run("stock", "shoulder", "--size", "400x500mm", "--thickness", "3mm").succeeds();

        run(
                        "layout",
                        job,
                        "--stock",
                        "shelf:shoulder",
                        "--stock",
                        "300x300mm@6mm",
                        "--count",
                        "1",
                        "--passes",
                        "40",
                        "--good-leather",
                        "body,face,welt",
                        "--offcut",
                        "rectangle",
                        "--true-size",
                        "-o",
                        out)
                .succeeds();
        assertThat(out.resolve("layout-1-true-size.pdf")).isNotEmptyFile();

        run(
                        "layout",
                        job,
                        "--stock",
                        "shelf:shoulder",
                        "--count",
                        "1",
                        "--passes",
                        "40",
                        "--offcut",
                        "rectangle",
                        "-o",
                        folder.resolve("cut"),
                        "--cut")
                .succeeds();
        var rest = shelf.named("shoulder");
        assertThat(rest.outline().polygon().isRectangle()).isTrue();
        assertThat(rest.usable().getArea()).isBetween(100_000.0, 195_000.0);
    }

    /** A whole piece of 2 m² for 100 is 50 for a square metre, also when half of it is gone. */
    @Test
    void aPriceForAllHoldsForWhatIsLeft() {
        run("stock", "side", "--size", "1000x2000mm", "--price", "100").succeeds();
        shelf.cut(Stock.panel("side", 1000, 1000, OptionalDouble.empty()));

        assertThat(shelf.price("side").orElseThrow().of(1e6, 1e6)).isEqualByComparingTo("50");
    }

    @Test
    void saysWhatIsWrong() throws Exception {
        run("stock", "shoulder", "--undo")
                .fails(CommandLineApplication.USER_ERROR, "There is no stock called \"shoulder\".");
        run("stock", "--size", "1x2in").fails(CommandLineApplication.USER_ERROR, "The stock has no name.");
        run("stock", "shoulder", "--size", "40x50cm").succeeds();
        run("stock", "shoulder", "--size", "40x50cm")
                .fails(CommandLineApplication.USER_ERROR, "There is stock called \"shoulder\" already.");
        run("stock", "belly").fails(CommandLineApplication.USER_ERROR, "Name one of these: shoulder.");
        Path bad = folder.resolve("bad.json");
        for (String json : new String[] {"{}", "[]", "{\"outline\": [[0,0],[1,1]]}", "{\"outline\": [[0],[1],[2]]}"}) {
            Files.writeString(bad, json);
            run("stock", "hide", "--outline", bad)
                    .fails(CommandLineApplication.USER_ERROR, "is no outline of stock in the form");
        }
        run("layout", bad, "--stock", "12x24in", "--most", "-o", folder, "--cut")
                .fails(CommandLineApplication.USER_ERROR, "that is not on the shelf cannot be written down");
    }
}
