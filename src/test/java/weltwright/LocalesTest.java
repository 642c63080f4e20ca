package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.app.cli.CommandLineApplication;
import weltwright.app.cli.TerminalProgress;

/**
 * The main job in processes of other languages, digits, calendars and time zones: what it writes is the same to the
 * last byte, so nothing in it depends on where, when or by which run it was written.
 */
class LocalesTest {
    @TempDir
    static Path folder;

    private static Path job;

    @BeforeAll
    static void makeTheSampleOnceInThisProcess() {
        StringWriter err = new StringWriter();
        CommandLineApplication.run(
                new String[] {
                    "make",
                    Path.of("sample-images", "drop-point.jpg").toString(),
                    "-o",
                    folder.resolve("first").toString(),
                    "--handle-thickness=19mm",
                    "--spine-thickness=3.5mm",
                    "--leather=2.5mm",
                    "--customer=Zoë",
                    "--notes=刀 for سكين"
                },
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                TerminalProgress.silent());
        assertThat(err.toString()).isEmpty();
        job = folder.resolve("first").resolve("drop-point.wwj");
    }

    /**
     * Digits and a decimal sign of their own: ar, in which the leather's thickness is told once more; a dotless i, a
     * decimal comma, the Buddhist calendar and Thai digits: tr. In Kiritimati it is tomorrow, or the day after, seen
     * from Los Angeles. The program has no words in these languages, and writes English.
     */
    @ParameterizedTest
    @CsvSource({
        "ar-EG-u-nu-arab, Africa/Cairo, C.UTF-8, --leather=٢٫٥ mm",
        "tr-TR-u-ca-buddhist-nu-thai, Pacific/Kiritimati, C.UTF-8, --leather=2.5mm",
        "en, America/Los_Angeles, C, --leather=2.5mm"
    })
    void writesTheSameBytesEverywhere(String language, String zone, String systemLocale, String option)
            throws Exception {
        Path there = folder.resolve(language);
        List<String> settings = new ArrayList<>(List.of("-Duser.timezone=" + zone));
        String[] parts = language.split("-u-");
        String[] names = parts[0].split("-");
        settings.add("-Duser.language=" + names[0]);
        if (names.length > 1) {
            settings.add("-Duser.country=" + names[1]);
        }
        if (parts.length > 1) {
            settings.add("-Duser.extensions=u-" + parts[1]);
        }
        succeeds(run(settings, systemLocale, "make", job.toString(), "-o", there.toString(), option));
        hasSameFiles(there, job.getParent());
    }

    /** In German the words are others, and the job and the lines of the drawings are the same. */
    @Test
    void aJobIsTheSameInGerman() throws Exception {
        Path german = folder.resolve("german");
        succeeds(run(
                List.of("-Duser.language=de", "-Duser.country=AT"),
                "C.UTF-8",
                "make",
                job.toString(),
                "-o",
                german.toString()));
        Path option = folder.resolve("german-by-option");
        succeeds(run(
                List.of("-Duser.language=en"),
                "C.UTF-8",
                "make",
                german.resolve("drop-point.wwj").toString(),
                "-o",
                option.toString(),
                "--language=de"));
        hasSameFiles(option, german);
        Path back = folder.resolve("english-again");
        succeeds(run(
                List.of("-Duser.language=de"),
                "C.UTF-8",
                "make",
                german.resolve("drop-point.wwj").toString(),
                "-o",
                back.toString(),
                "--language",
                "en"));
        hasSameFiles(back, job.getParent());
        assertThat(documentOf(german.resolve("drop-point.wwj"))).isEqualTo(documentOf(job));
        String svg = Files.readString(german.resolve("drop-point-pattern.svg"));
        assertThat(svg).contains("Mantel", "Keder").doesNotContain("welt of", "grain side");
        assertThat(lines(svg))
                .isNotEmpty()
                .isEqualTo(lines(Files.readString(job.resolveSibling("drop-point-pattern.svg"))));
    }

    /** Of names and places of pieces follow the ticks and the layouts by hand of a job. */
    @Test
    void piecesAndOperationsHaveTheSameIdentifiers() throws Exception {
        ProgramProcess german = ProgramProcess.run(
                folder, List.of(ProgramProcess.JAVA, "-Duser.language=de"), Map.of(), JobIdentifiers.class);
        succeeds(german);
        assertThat(german.out().lines())
                .contains("join/glue/body+welt", "finish/snap/handle strap")
                .containsExactlyElementsOf(JobIdentifiers.all());
    }

    /** Numbers of the paths and circles in an SVG, apart from where it lays the pieces. */
    private static List<String> lines(String svg) {
        return Pattern.compile("\\br=\"[^\"]*\"")
                .matcher(svg)
                .results()
                .map(MatchResult::group)
                .toList();
    }

    private static void hasSameFiles(Path made, Path expected) throws IOException {
        assertThat(documentOf(made.resolve("drop-point.wwj")))
                .isEqualTo(documentOf(expected.resolve("drop-point.wwj")));
        for (String file : List.of(
                "drop-point.wwj", "drop-point-pattern.svg", "drop-point-pattern.pdf", "drop-point-pattern.dxf")) {
            assertThat(made.resolve(file)).hasSameBinaryContentAs(expected.resolve(file));
        }
    }

    /** Java sees a replacement character for each byte of such a name: nothing may be made of it. */
    @Test
    void aNameThatTheSystemsLocaleGarblesIsRefusedInWords() throws Exception {
        ProgramProcess ended = run(
                List.of(),
                "C",
                "make",
                job.toString(),
                "-o",
                folder.resolve("garbled").toString(),
                "--customer=Łukasz");
        assertThat(ended.code()).isEqualTo(1);
        assertThat(ended.err().strip())
                .contains("LC_ALL=C.UTF-8")
                .contains("ukasz")
                .doesNotContain("\n");
        assertThat(folder.resolve("garbled")).doesNotExist();
    }

    private static String documentOf(Path job) throws IOException {
        try (ZipFile zip = new ZipFile(job.toFile());
                InputStream in = zip.getInputStream(zip.getEntry("job.json"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static ProgramProcess run(List<String> settings, String systemLocale, String... args)
            throws IOException, InterruptedException {
        List<String> java = new ArrayList<>(List.of(ProgramProcess.JAVA));
        java.addAll(settings);
        return ProgramProcess.run(folder, java, Map.of("LC_ALL", systemLocale), args);
    }

    private static void succeeds(ProgramProcess ended) {
        assertThat(ended.err()).isEmpty();
        assertThat(ended.code()).isZero();
    }
}
