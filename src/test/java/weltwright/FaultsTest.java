package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.cli.CommandLineApplication;
import weltwright.app.cli.TerminalProgress;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.TestJobs;

/**
 * What a computer can do to the program while it works: it says on one line what is wrong and what to do, and leaves
 * what was there as it was. Elsewhere are: a process that is killed or meets another while it saves (KilledSaveTest), a
 * job changed by another window (SaveConflictTest), a clock that jumps (BackupTest), a folder that vanished
 * (AtomicFileTest), no display (WeltwrightTest).
 */
class FaultsTest {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();

    @TempDir
    Path folder;

    /**
     * A limit on the size of a file makes a write fail in its midst, as a full disk does: setrlimit(2), RLIMIT_FSIZE,
     * which {@code ulimit -f} sets in units of 512 bytes (POSIX). Java unpacks OpenCV before, without a limit.
     */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whereTheDiskIsFullTheOldFileStays() throws Exception {
        Path pattern = made().resolve("drop-point-pattern.pdf");
        byte[] before = Files.readAllBytes(pattern);
        List<String> names = names(pattern.getParent());
        // Without hsperfdata: Java itself would write a file of 32 kB.
        ProgramProcess full = ProgramProcess.run(
                folder,
                List.of("sh", "-c", "ulimit -f 40; exec \"$0\" \"$@\"", ProgramProcess.JAVA, "-XX:-UsePerfData"),
                Map.of(),
                "make",
                pattern.resolveSibling("drop-point.wwj").toString(),
                "--pitch=5mm",
                "-o",
                pattern.getParent().toString());
        failsInPlainWords(full);
        assertThat(Files.readAllBytes(pattern)).isEqualTo(before);
        assertThat(names(pattern.getParent())).isEqualTo(names);
    }

    @Test
    void aPhotoThatIsTooLargeForTheMemoryIsTold() throws Exception {
        ProgramProcess small = ProgramProcess.run(
                folder,
                List.of(ProgramProcess.JAVA, "-Xmx20m"),
                Map.of(),
                "trace",
                PHOTO.toString(),
                "--handle-thickness=19mm",
                "-o",
                "knife.json");
        failsInPlainWords(small);
        assertThat(small.err()).containsIgnoringCase("memory");
        assertThat(folder.resolve("knife.json")).doesNotExist();
    }

    @Test
    void withoutItsLibrariesAnInstalledProgramSaysSo() throws Exception {
        Path natives = Files.createDirectory(folder.resolve("natives"));
        ProgramProcess without = installed(natives);
        failsInPlainWords(without);
        assertThat(without.err()).contains(natives.toString(), "Install the program again");
    }

    /** Java itself may warn of such a file before. */
    @Test
    void withTheLibrariesOfAnotherPlatformAnInstalledProgramSaysSo() throws Exception {
        Path natives = Files.createDirectory(folder.resolve("natives"));
        Files.writeString(natives.resolve(System.mapLibraryName("opencv_java")), "MZ, as on another platform");
        ProgramProcess other = installed(natives);
        assertThat(other.code()).isEqualTo(1);
        assertThat(other.err().lines().reduce("", (one, next) -> next))
                .contains(natives.toString(), "for this computer")
                .doesNotContain("Exception");
    }

    private ProgramProcess installed(Path natives) throws IOException, InterruptedException {
        ProgramProcess run = ProgramProcess.run(
                folder,
                List.of(ProgramProcess.JAVA, "-Dweltwright.natives=" + natives),
                Map.of(),
                "sheet",
                "-o",
                "sheet.pdf");
        assertThat(folder.resolve("sheet.pdf")).doesNotExist();
        return run;
    }

    /** Makes a pattern of an outline drawn by hand over the photo, whose file alone is larger than the limit. */
    private Path made() {
        Path job = folder.resolve("drop-point.wwj");
        JobFile.write(
                Job.begin(LocalDate.of(2024, 5, 6))
                        .assumingUsualThicknesses()
                        .withPhoto(Photo.read(PHOTO))
                        .withSilhouette(TestJobs.silhouette()),
                job);
        Path made = folder.resolve("made");
        StringWriter err = new StringWriter();
        int code = CommandLineApplication.run(
                new String[] {"make", job.toString(), "-o", made.toString()},
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                TerminalProgress.silent());
        assertThat(err.toString()).isEmpty();
        assertThat(code).isZero();
        return made;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static void failsInPlainWords(ProgramProcess run) {
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err().strip()).isNotEmpty().doesNotContain("\n", "Exception", "\tat ", "defect");
    }
}
