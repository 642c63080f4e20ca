package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.image.Photo;
import weltwright.io.DirectoryListing;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.TestJobs;

/** Checks that the command line replaces no file whose content would be lost. */
class OverwriteTest {
    private static final Path HERS = Path.of("src/test/resources/scenes/skinner-sheet-a4.jpg");
    private static final Path HIS = Path.of("src/test/resources/scenes/recurve-sheet-a4.jpg");

    @TempDir
    Path folder;

    private Path out;
    private Path job;

    @BeforeEach
    void nameTheFiles() {
        out = folder.resolve("out");
        job = out.resolve("IMG_0001.wwj");
    }

    private Path photo(String name, Path of) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.copy(of, file);
    }

    private void putInPlace(Job there) throws IOException {
        Files.createDirectories(out);
        JobFile.write(there, job);
    }

    /** A job as the window saves it before anything was chosen. */
    private static Job begunFrom(Path photo) {
        return Job.begin(LocalDate.of(2024, 5, 6)).withPhoto(Photo.read(photo));
    }

    /** Phones count their photos, and begin again at one. */
    @Test
    void refusesAJobFromAnotherPhotoOfTheSameName() throws IOException {
        Path hers = photo("a/IMG_0001.jpg", HERS);
        Path his = photo("b/IMG_0001.jpg", HIS);
        CommandLineRun.of("make", hers, "-o", out).succeeds();
        byte[] before = Files.readAllBytes(job);
        byte[] pattern = Files.readAllBytes(out.resolve("IMG_0001-pattern.svg"));

        CommandLineRun.of("make", his, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, job.toString(), "another photo", "--force", "folder");
        assertThat(job).hasBinaryContent(before);
        assertThat(out.resolve("IMG_0001-pattern.svg")).hasBinaryContent(pattern);
        assertThat(DirectoryListing.of(out)).hasSize(4);

        CommandLineRun.of("make", his, "--force", "-o", out).succeeds();
        assertThat(JobFile.read(job).photo()).contains(Photo.read(his));
        assertThat(out.resolve("IMG_0001.wwj.bak")).hasBinaryContent(before);
    }

    @Test
    void refusesPhotosThatDifferInTheirExtensionOnly() throws IOException {
        putInPlace(begunFrom(HERS));
        byte[] before = Files.readAllBytes(job);
        Path other = photo("IMG_0001.webp", HIS); // what it is tells its content, not its name
        CommandLineRun.of("make", other, "-o", out).fails(CommandLineApplication.USER_ERROR, "another photo");
        assertThat(job).hasBinaryContent(before);
    }

    @Test
    void replacesTheJobOfTheSamePhotoAndChoices() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        putInPlace(begunFrom(photo));
        CommandLineRun.of("make", photo, "-o", out).succeeds();
        assertThat(JobFile.read(job).begun()).as("the day it was begun").isEqualTo(LocalDate.of(2024, 5, 6));
        byte[] made = Files.readAllBytes(job);

        assertThat(CommandLineRun.of("make", photo, "-o", out).succeeds().out()).doesNotContain(".bak");
        assertThat(job).hasBinaryContent(made);
        assertThat(CommandLineRun.of("make", photo, "--customer", "Anouk", "-o", out)
                        .succeeds()
                        .out())
                .contains("kept as: " + job + ".bak");
        CommandLineRun.of("make", photo, "-o", out).fails(CommandLineApplication.USER_ERROR, "other words");
    }

    @Test
    void namesTheBackupOfALinkedJob() throws IOException {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere")).resolve("real.wwj");
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette()), elsewhere);
        Path link = Files.createSymbolicLink(Files.createDirectories(out).resolve("anouk.wwj"), elsewhere);
        Path kept = elsewhere.toRealPath().resolveSibling("real.wwj.bak");
        assertThat(CommandLineRun.of("make", link, "--pitch=3.85", "-o", out)
                        .succeeds()
                        .out())
                .contains("kept as: " + kept);
        assertThat(kept).exists();
        assertThat(link).isSymbolicLink();
    }

    @Test
    void refusesOtherChoicesForTheSamePhoto() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        CommandLineRun.of("make", photo, "--pitch=3.85", "-o", out).succeeds();
        byte[] before = Files.readAllBytes(job);
        CommandLineRun.of("make", photo, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "other choices", "from that job", "--force");
        CommandLineRun.of("make", photo, "--pitch=3.85", "--handle-thickness=20", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "other choices");
        assertThat(job).hasBinaryContent(before);

        CommandLineRun.of("make", job, "--pitch=4", "-o", out).succeeds();
        assertThat(JobFile.read(job).spec().stitching().pitchMm()).isEqualTo(4);
        assertThat(out.resolve("IMG_0001.wwj.bak")).hasBinaryContent(before);
    }

    /** From elsewhere, the same rules hold: the job in place may have been worked on since. */
    @Test
    void refusesOtherChoicesForACopyOfTheJob() throws IOException {
        Path source = folder.resolve("IMG_0001.wwj");
        Job there = Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette());
        JobFile.write(there, source);
        putInPlace(there);
        CommandLineRun.of("make", source, "-o", out).succeeds();
        CommandLineRun.of("make", source, "--pitch=3.85", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "other choices");
        CommandLineRun.of("make", source, "--pitch=3.85", "--force", "-o", out).succeeds();
        assertThat(JobFile.read(job).spec().stitching().pitchMm()).isEqualTo(3.85);
    }

    @Test
    void acceptsTheSameEdgeSideAgain() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        CommandLineRun.of("make", photo, "--other-side", "-o", out).succeeds();
        CommandLineRun.of("make", photo, "--other-side", "-o", out).succeeds();
        CommandLineRun.of("make", photo, "-o", out).fails(CommandLineApplication.USER_ERROR, "corrected by hand");
    }

    @Test
    void keepsAJobWithReviewedStretches() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        Job traced = begunFrom(photo).withTrace(TestJobs.full().trace().orElseThrow());
        putInPlace(traced.withReviewed(traced.unsure().get(0)));
        CommandLineRun.of("make", photo, "-o", out).fails(CommandLineApplication.USER_ERROR, "corrected by hand");
    }

    @Test
    void doesNotReplaceAnUnreadableFile() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        putInPlace(begunFrom(photo));
        byte[] damaged = Files.readAllBytes(job);
        damaged[damaged.length - 30] ^= 1;
        Files.write(job, damaged);
        CommandLineRun.of("make", photo, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "cannot be read", "--force");
        assertThat(job).hasBinaryContent(damaged);
    }

    @ParameterizedTest
    @ValueSource(strings = {"pdf", "svg", "dxf"})
    void doesNotReplaceAPatternWithoutItsJob(String kind) throws IOException {
        Path source = folder.resolve("anouk.wwj");
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette()), source);
        CommandLineRun.of("make", source, "-o", out).succeeds();
        for (String other : new String[] {"pdf", "svg", "dxf"}) {
            if (!other.equals(kind)) {
                Files.delete(out.resolve("anouk-pattern." + other));
            }
        }
        Files.delete(out.resolve("anouk.wwj"));
        byte[] before = Files.readAllBytes(out.resolve("anouk-pattern." + kind));
        CommandLineRun.of("make", source, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "anouk-pattern." + kind, "--force");
        assertThat(DirectoryListing.of(out)).hasSize(1);
        assertThat(out.resolve("anouk-pattern." + kind)).hasBinaryContent(before);
        CommandLineRun.of("make", source, "--force", "-o", out).succeeds();
    }

    /** The trace is the long part, and may have been of a photo that is soon gone. */
    @Test
    void savesTheTraceWhereTheChoicesAreRefused() throws IOException {
        Path photo = photo("IMG_0001.jpg", HERS);
        CommandLineRun.of("make", photo, "--handle-depth=200mm", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "handle", "The traced outline is saved", "make " + job);
        assertThat(DirectoryListing.of(out)).containsExactly(job);
        assertThat(JobFile.read(job).trace()).isPresent();

        // The way out that it names, and the other that everybody tries first.
        CommandLineRun.of("make", job, "--handle-depth=0", "-o", folder.resolve("elsewhere"))
                .succeeds();
        CommandLineRun.of("make", photo, "--handle-depth=0", "-o", out).succeeds();
        assertThat(out.resolve("IMG_0001-pattern.pdf")).exists();
    }

    /** By whatever name it is called: the photo, a link to it, another name of the same file. */
    @Test
    void destroysNoInput() throws IOException {
        Path photo = photo("knife.jpg", HERS);
        Path source = folder.resolve("anouk.wwj");
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette()), source);
        Path list = folder.resolve("drawer.json");
        CommandLineRun.of("hardware", "-o", list).succeeds();
        Path options = Files.writeString(folder.resolve("options.txt"), "--page=a4\n");
        for (Path input : new Path[] {photo, source, list, options}) {
            byte[] before = Files.readAllBytes(input);
            Path[] names = {
                input,
                Files.createSymbolicLink(folder.resolve("link"), input),
                Files.createLink(folder.resolve("hard-link"), input),
                folder.resolve("sub/..").resolve(input.getFileName())
            };
            Files.createDirectories(folder.resolve("sub"));
            for (Path name : names) {
                CommandLineRun.of("sheet", "-o", name).fails(CommandLineApplication.USER_ERROR, "is not a PDF");
                CommandLineRun.of("trace", photo, "-o", name)
                        .fails(CommandLineApplication.USER_ERROR, "is not a traced knife");
                if (input != list) {
                    CommandLineRun.of("hardware", source, "-o", name)
                            .fails(CommandLineApplication.USER_ERROR, "is not a list of hardware");
                }
            }
            CommandLineRun.of("sheet", "@" + options, "-o", options)
                    .fails(CommandLineApplication.USER_ERROR, "is not a PDF");
            assertThat(input).hasBinaryContent(before);
            Files.delete(folder.resolve("link"));
            Files.delete(folder.resolve("hard-link"));
        }
    }

    /** Each of the files that make writes: in its place is a link to something that it reads. */
    @ParameterizedTest
    @ValueSource(strings = {"anouk.wwj", "anouk-pattern.pdf", "anouk-pattern.svg", "anouk-pattern.dxf"})
    void destroysNoInputOfMakeBehindALink(String name) throws IOException {
        Path photo = photo("anouk.jpg", HERS);
        Path drawer = folder.resolve("drawer.json");
        CommandLineRun.of("hardware", "-o", drawer).succeeds();
        Files.createDirectories(out);
        for (Path input : new Path[] {photo, drawer}) {
            byte[] before = Files.readAllBytes(input);
            Files.createSymbolicLink(out.resolve(name), input);
            CommandLineRun.of("make", photo, "--hardware", drawer, "--force", "-o", out)
                    .fails(CommandLineApplication.USER_ERROR, name, "is not a");
            assertThat(input).hasBinaryContent(before);
            Files.delete(out.resolve(name));
            assertThat(out).isEmptyDirectory();
        }
    }

    @Test
    void refusesAProtectedPatternBeforeTracing() throws IOException {
        Path source = folder.resolve("anouk.wwj");
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette()), source);
        CommandLineRun.of("make", source, "-o", out).succeeds();
        Path pdf = out.resolve("anouk-pattern.pdf");
        byte[] before = Files.readAllBytes(pdf);
        assertThat(pdf.toFile().setWritable(false, false)).isTrue();
        byte[] jobBefore = Files.readAllBytes(out.resolve("anouk.wwj"));
        CommandLineRun.of("make", out.resolve("anouk.wwj"), "--pitch=3.85", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "write-protected");
        assertThat(pdf).hasBinaryContent(before);
        assertThat(out.resolve("anouk.wwj")).hasBinaryContent(jobBefore);
    }

    /** NAME_MAX on Linux is 255 bytes; the names of what is made are longer than the photo's. */
    @Test
    void shortensTheNamesForThePhotoWithTheLongestName() throws IOException {
        Path photo = photo("k".repeat(251) + ".jpg", HERS);
        CommandLineRun.of("make", photo, "-o", out).succeeds();
        assertThat(DirectoryListing.of(out)).hasSize(4);
        CommandLineRun.of("make", photo, "--customer=Anouk", "-o", out).succeeds();
        Path made = DirectoryListing.of(out).stream()
                .filter(f -> f.toString().endsWith(".wwj"))
                .findFirst()
                .orElseThrow();
        assertThat(JobFile.read(made).photo().orElseThrow().name())
                .isEqualTo(photo.getFileName().toString());
        assertThat(DirectoryListing.of(out)).as("and the job before").hasSize(5);
        assertThat(Optional.of(JobFile.read(made).customer())).contains("Anouk");
    }
}
