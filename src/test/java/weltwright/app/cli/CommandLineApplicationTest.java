package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.io.DirectoryListing;
import weltwright.job.TestJobs;

class CommandLineApplicationTest {
    private static final double POINTS_PER_MM = 72 / 25.4;

    @TempDir
    Path folder;

    @Test
    void explainsTheTermsOfTheTradeInTheHelp() {
        assertThat(CommandLineRun.of("--help").succeeds().out()).contains("sheet", "trace", "make", "3/4in", "7/8oz");
        assertThat(CommandLineRun.of("sheet", "--help").succeeds().out()).contains("--page", "100 %");
        assertThat(CommandLineRun.of("trace", "--help").succeeds().out()).contains("heel:", "butt:", "(the spine)");
        assertThat(CommandLineRun.of("make", "--help").succeeds().out())
                .contains("spine:", "throat:", "welt:", "pitch:", "ease:", "stitch margin:");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "carve",
                "sheet",
                "sheet --page a5 -o a.pdf",
                "trace -o knife.json",
                "trace a.jpg --handle-thickness",
                "make a.jpg --kind purse -o out",
                "make a.jpg --hand both -o out",
                "make a.jpg --colour red -o out",
                "make a.jpg b.jpg -o out",
                "--colour",
            })
    void reportsUsageErrorsInOneLine(String line) {
        CommandLineRun.of((Object[]) line.split(" ")).fails(CommandLineApplication.USAGE_ERROR, "--help");
    }

    /** Page sizes: ISO 216; ANSI/ASME Y14.1 A and B, 8.5 in by 11 in and 11 in by 17 in. */
    @ParameterizedTest
    @CsvSource({"a4, 210, 297", "letter, 215.9, 279.4", "a3, 297, 420", "tabloid, 279.4, 431.8"})
    void writesTheSheet(String page, float widthMm, float heightMm) throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        CommandLineRun.of("sheet", "--page", page, "-o", pdf).succeeds();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            var box = document.getPage(0).getMediaBox();
            assertThat(box.getWidth() / POINTS_PER_MM).isBetween(widthMm - 0.05, widthMm + 0.05);
            assertThat(box.getHeight() / POINTS_PER_MM).isBetween(heightMm - 0.05, heightMm + 0.05);
        }
    }

    @Test
    void leavesNothingBehindWhereAFileCannotBeWritten() throws IOException {
        Path photo = Files.write(folder.resolve("knife.png"), TestJobs.photo().bytes());
        Path inTheWay = Files.createFile(folder.resolve("in-the-way"));

        CommandLineRun.of("sheet", "-o", folder.resolve("none/sheet.pdf"))
                .fails(CommandLineApplication.USER_ERROR, "none");
        CommandLineRun.of("sheet", "-o", folder).fails(CommandLineApplication.USER_ERROR, folder.toString());
        CommandLineRun.of("make", photo, "-o", inTheWay)
                .fails(CommandLineApplication.USER_ERROR, "in-the-way is not a folder");
        CommandLineRun.of("make", photo, "-o", inTheWay.resolve("deeper"))
                .fails(CommandLineApplication.USER_ERROR, "in-the-way is not a folder");

        assertThat(folder).isDirectoryContaining(inTheWay::equals);
        assertThat(DirectoryListing.of(folder)).containsExactlyInAnyOrder(photo, inTheWay);
        assertThat(inTheWay).isEmptyFile();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --handle-thickness  | 7/0 in       | handle thickness
            --handle-thickness  | -3mm         | handle thickness
            --handle-thickness  | abc          | handle thickness
            --handle-thickness  | 1e9 mm       | handle thickness
            --handle-thickness  | NaN          | handle thickness
            --spine-thickness   | 350mm        | spine thickness
            --tip-drop          | 3 oz         | tip drop
            --focal-35mm        | wide         | focal length
            --focal-35mm        | 0            | focal length
            --sheet-bars        | 99.7mm       | bar across the sheet
            --sheet-bars        | 99.7mm,9mm   | bar down the sheet
            --sheet-bars        | a,b,c        | bar across the sheet
            """)
    void refusesAbsurdMeasuresOfTheKnife(String option, String typed, String name) throws IOException {
        Path photo = Files.write(folder.resolve("knife.png"), TestJobs.photo().bytes());
        CommandLineRun.of("trace", photo, option, typed, "-o", folder.resolve("knife.json"))
                .fails(CommandLineApplication.USER_ERROR, name);
        CommandLineRun.of("make", photo, option, typed, "-o", folder.resolve("out"))
                .fails(CommandLineApplication.USER_ERROR, name);
        assertThat(DirectoryListing.of(folder)).containsExactly(photo);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --leather           | 7/8          | leather thickness
            --leather           | 40mm         | leather thickness
            --welt-layers       | 1.5          | number of welt layers
            --welt-layers       | some         | number of welt layers
            --stitch-margin     | 3 oz         | stitch margin
            --welt-margin       | -5           | inner margin of the welt
            --ease              | 1 2 mm       | ease
            --pitch             | 0            | stitch pitch
            --neutral-factor    | 1.1          | neutral factor
            --belt-width        | 7/0 in       | belt width
            --belt-thickness    | 1m           | belt thickness
            --handle-depth      | 2 m          | depth of the handle
            --drain-hole        | 3/8/2 in     | drain hole
            --edge-thickness    | thin         | edge thickness
            --due               | tomorrow     | day
            --printed-square    | 50mm         | width of the printed square
            """)
    void refusesAbsurdChoicesOfTheMaker(String option, String typed, String name) throws IOException {
        Path photo = Files.write(folder.resolve("knife.png"), TestJobs.photo().bytes());
        CommandLineRun.of("make", photo, option, typed, "-o", folder.resolve("out"))
                .fails(CommandLineApplication.USER_ERROR, name);
        assertThat(DirectoryListing.of(folder)).containsExactly(photo);
    }

    @Test
    void refusesWhatIsNoPhotoAndNoJob() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter.jpg"), "Dear sir");
        Path empty = Files.createFile(folder.resolve("empty.jpg"));
        Path corrupt = Files.write(folder.resolve("corrupt.wwj"), new byte[] {'P', 'K', 3, 4, 0, 0, 0});
        Path missing = folder.resolve("missing.jpg");
        Path out = folder.resolve("out");

        for (Path file : new Path[] {letter, empty, missing, folder}) {
            CommandLineRun.of("trace", file, "-o", folder.resolve("knife.json"))
                    .fails(CommandLineApplication.USER_ERROR, file.getFileName().toString());
            CommandLineRun.of("make", file, "-o", out)
                    .fails(CommandLineApplication.USER_ERROR, file.getFileName().toString());
        }
        CommandLineRun.of("make", corrupt, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "corrupt.wwj is not a job file, or is damaged.");
        assertThat(DirectoryListing.of(folder)).containsExactlyInAnyOrder(letter, empty, corrupt);
    }

    /** Pictures that no camera takes: read, and refused in words. */
    @ParameterizedTest
    @CsvSource({"1, 1, jpg", "1, 1, png", "1, 1, bmp", "1, 1, tif", "20000, 3, jpg", "3, 20000, png", "64, 64, jpg"})
    void refusesPicturesInWhichNothingCanBeMeasured(int width, int height, String kind) throws IOException {
        Path photo = folder.resolve("odd." + kind);
        assertThat(ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), kind, photo.toFile()))
                .isTrue();
        for (String ground : new String[] {"find", "sheet", "ruled:10mm", "paper:a4"}) {
            CommandLineRun.of("trace", photo, "--ground", ground, "-o", folder.resolve("knife.json"))
                    .fails(CommandLineApplication.USER_ERROR, width + " by " + height + " pixels");
        }
        assertThat(CommandLineRun.of("look", photo).code()).isEqualTo(CommandLineApplication.USER_ERROR);
        CommandLineRun.of("phone", photo, photo, photo, "--name", "odd")
                .fails(CommandLineApplication.USER_ERROR, "odd." + kind);
    }

    /**
     * As when a pipe is closed at its other end, or a disk is full: a writer keeps that to itself until it is asked.
     */
    @Test
    void returnsAnExitCodeWhereTheReportCannotBeWritten() {
        PrintWriter closed = new PrintWriter(new Writer() {
            @Override
            public void write(char[] text, int from, int length) throws IOException {
                throw new IOException("Broken pipe");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        });
        StringWriter err = new StringWriter();
        String[] args = {"sheet", "-o", folder.resolve("sheet.pdf").toString()};
        assertThat(CommandLineApplication.run(args, closed, new PrintWriter(err), TerminalProgress.silent()))
                .isEqualTo(CommandLineApplication.OUTPUT_ERROR);
        assertThat(err.toString().strip()).isNotEmpty().doesNotContain("\n", "Exception");
        assertThat(folder.resolve("sheet.pdf")).exists();
    }

    @Test
    void logsADefectAndPrintsNoStackTrace() throws IOException {
        PrintWriter broken = new PrintWriter(new StringWriter()) {
            @Override
            public void println(String line) {
                throw new IllegalStateException("of our making");
            }
        };
        StringWriter err = new StringWriter();
        String[] args = {"sheet", "-o", folder.resolve("sheet.pdf").toString()};

        int code = CommandLineApplication.run(args, broken, new PrintWriter(err), TerminalProgress.silent());

        assertThat(code).isEqualTo(CommandLineApplication.INTERNAL_ERROR);
        assertThat(err.toString().strip()).doesNotContain("\n", "IllegalState");
        Matcher log = Pattern.compile("in (\\S+\\.log)\\.").matcher(err.toString());
        assertThat(log.find()).isTrue();
        Path file = Path.of(log.group(1));
        assertThat(file).content().contains("IllegalStateException: of our making", "\tat weltwright.");
    }
}
