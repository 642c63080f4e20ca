package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.TestJobs;

class LayoutCommandTest {
    @TempDir
    Path folder;

    private Path jobFile;
    private Path out;

    @BeforeEach
    void saveAJob() {
        Job job = Job.begin(LocalDate.of(2024, 5, 6)).assumingUsualThicknesses().withSilhouette(TestJobs.silhouette());
        jobFile = folder.resolve("anouk.wwj");
        out = folder.resolve("laid/out");
        JobFile.write(job, jobFile);
    }

    private static int sheaths(CommandLineRun run) {
        Matcher count = Pattern.compile("Sheaths: (\\d+)").matcher(run.out());
        assertThat(count.find()).isTrue();
        return Integer.parseInt(count.group(1));
    }

    @Test
    void writesTheMostSheathsAsPdfSvgAndDxf() throws Exception {
        CommandLineRun run = CommandLineRun.of(
                        "layout", jobFile, "--stock", "12x24in", "--most", "--passes", "60", "-o", out)
                .succeeds();

        int sheaths = sheaths(run);
        assertThat(sheaths).isPositive();
        assertThat(run.out()).contains("anouk: " + sheaths, "Written: " + out.resolve("layout.pdf"));
        try (PDDocument pdf = Loader.loadPDF(out.resolve("layout.pdf").toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(pdf))
                    .contains("609.6 mm × 304.8 mm (24 in × 12 in)", sheaths + " × anouk", "sheath " + sheaths)
                    .containsPattern("\\b1: \\w+, sheath \\d")
                    .containsPattern("\\b2: \\w+, sheath \\d");
        }
        String svg = Files.readString(out.resolve("layout.svg"));
        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(out.resolve("layout.svg").toFile());
        assertThat(svg).contains("body").contains("width=\"609.6");
        assertThat(out.resolve("layout.dxf")).isNotEmptyFile();
    }

    @Test
    void quotesByTheMakersOwnPrices() throws Exception {
        Path prices = folder.resolve("prices.json");
        CommandLineRun.of("prices", "-o", prices).succeeds();
        CommandLineRun.of("prices", "-o", prices)
                .fails(CommandLineApplication.USER_ERROR, "There are prices in " + prices + " already.");
        Object[] call = {
            "layout",
            jobFile,
            "--stock",
            "12x24in",
            "--count",
            "1",
            "--passes",
            "30",
            "-o",
            out,
            "--quote",
            "--prices",
            prices
        };
        CommandLineRun.of(call).fails(CommandLineApplication.USER_ERROR, "All prices in " + prices + " are 0.");
        Files.writeString(
                prices,
                Files.readString(prices)
                        .replaceAll("(\"labour_per_hour\"\\s*:\\s*)0", "$130.00")
                        .replaceAll("(\"currency\"\\s*:\\s*)\"\\w+\"", "$1\"EUR\""));
        CommandLineRun run = CommandLineRun.of(call).succeeds();

        assertThat(run.out()).containsPattern("labour +EUR \\d+\\.\\d\\d").contains("anouk-quote.pdf");
        try (PDDocument pdf = Loader.loadPDF(out.resolve("anouk-quote.pdf").toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(pdf)).contains("Quote for a leather sheath", "To pay", "EUR ");
        }
        CommandLineRun.of(
                        "layout",
                        jobFile,
                        "--stock",
                        "12x24in",
                        "--most",
                        "-o",
                        out,
                        "--quote",
                        "--prices",
                        folder.resolve("none.json"))
                .fails(CommandLineApplication.USER_ERROR, "There are no prices in ");
    }

    /** As make does: the drawing is that of a job in which the usual thicknesses were typed. */
    @Test
    void assumesThicknessesThatWereNotTypedAndSaysSo() throws Exception {
        Job job = Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette());
        Path bare = folder.resolve("bare/anouk.wwj");
        Files.createDirectories(bare.getParent());
        JobFile.write(job, bare);
        Path other = folder.resolve("other");
        CommandLineRun typed = CommandLineRun.of(
                        "layout", jobFile, "--stock", "300x400", "--count", "1", "--passes", "20", "-o", out)
                .succeeds();
        CommandLineRun assumed = CommandLineRun.of(
                        "layout", bare, "--stock", "300x400", "--count", "1", "--passes", "20", "-o", other)
                .succeeds();

        assertThat(typed.out()).doesNotContain("was taken to be");
        assertThat(assumed.out())
                .contains("anouk: The handle was taken to be 19 mm thick.", "anouk: The spine was taken to be 3.5 mm");
        assertThat(other.resolve("layout.svg")).hasSameTextualContentAs(out.resolve("layout.svg"));
    }

    @Test
    void jobsOfOneNameInTwoFoldersAreTwo() throws Exception {
        Path second = folder.resolve("south/anouk.wwj");
        Files.createDirectories(second.getParent());
        Files.copy(jobFile, second);
        Path prices = folder.resolve("prices.json");
        CommandLineRun.of("prices", "-o", prices).succeeds();
        Files.writeString(prices, Files.readString(prices).replaceAll("(\"labour_per_hour\"\\s*:\\s*)0", "$130.00"));
        CommandLineRun run = CommandLineRun.of(
                        "layout",
                        jobFile,
                        second,
                        "--stock",
                        "400x600mm",
                        "--count",
                        "2",
                        "--passes",
                        "30",
                        "-o",
                        out,
                        "--quote",
                        "--prices",
                        prices)
                .succeeds();

        String first = folder.getFileName() + "/anouk";
        assertThat(run.out()).contains("  " + first + ": 1", "  south/anouk: 1");
        assertThat(out.resolve(folder.getFileName() + "-anouk-quote.pdf")).exists();
        assertThat(out.resolve("south-anouk-quote.pdf")).exists();
    }

    @Test
    void severalStocksHaveFilesOfTheirOwn() {
        CommandLineRun run = CommandLineRun.of(
                        "layout",
                        jobFile,
                        "--stock",
                        "300x400mm",
                        "--stock",
                        "12x24in",
                        "--most",
                        "--passes",
                        "60",
                        "-o",
                        out)
                .succeeds();

        assertThat(run.out())
                .contains("On the panel of 400 mm × 300 mm:", "On the panel of 609.6 mm × 304.8 mm:")
                .contains("Written: " + out.resolve("layout-1.pdf"), "Written: " + out.resolve("layout-2.dxf"));
        assertThat(out.resolve("layout-2.svg")).isNotEmptyFile();
    }

    /** A panel is the same whichever side is named first; equal seeds and passes give equal drawings. */
    @Test
    void equalCallsGiveEqualDrawings() throws Exception {
        CommandLineRun.of("layout", jobFile, "--stock", "300x400", "--count", "1", "--passes", "40", "-o", out)
                .succeeds();
        Path other = folder.resolve("other");
        CommandLineRun.of("layout", jobFile, "--stock", "40cm x 30cm", "--count", "1", "--passes", "40", "-o", other)
                .succeeds();

        assertThat(other.resolve("layout.svg")).hasSameTextualContentAs(out.resolve("layout.svg"));
    }

    @Test
    void saysWhatIsWrong() {
        CommandLineRun.of("layout", jobFile, "--stock", "12in", "--most", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "The size of the stock cannot be read from \"12in\".");
        CommandLineRun.of("layout", jobFile, "--stock", "60x60mm", "--most", "--passes", "5", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "Not one whole sheath was found room for");
        CommandLineRun.of("layout", jobFile, "--stock", "12x24in", "--count", "0", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "0 sheaths cannot be laid out.");
        CommandLineRun.of("layout", jobFile, "--stock", "12x24in", "--count", "90", "--passes", "20", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "Of 90 sheaths, room was found");
        CommandLineRun.of("layout", jobFile, "--stock", "12x24in", "--most", "--seconds", "0", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "A search cannot last 0.0 seconds.");
        CommandLineRun.of("layout", jobFile, "--stock", "12x24in", "-o", out)
                .fails(CommandLineApplication.USAGE_ERROR, "--most");
        CommandLineRun.of("layout", jobFile, "--stock", "12x24in", "--stock-thickness", "9mm", "--most", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "No piece of anouk is made of leather as thick");
    }
}
