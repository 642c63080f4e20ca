package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.LongRun;

/** Nothing is lost and nothing left behind, whenever a saving process is ended, and however many save one file. */
class KilledSaveTest {
    private static final int LONGEST_MS = 60;

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("job.wwj");
    }

    @Test
    void killed() throws Exception {
        Random random = new Random(LongRun.seed(KilledSaveTest.class));
        int kills = LongRun.tries(6, 330);
        int leftBehind = 0;
        for (int i = 0; i < kills; i++) {
            SavingProcess process = SavingProcess.withoutEnd(file);
            Thread.sleep(random.nextInt(LONGEST_MS));
            process.kill();
            assertBothAreWhole();
            leftBehind += temporaryFiles().size();
            if (i % 2 == 0) { // the program is started again, or saves there again
                UnfinishedFiles.removeAll();
            } else {
                SavingProcess.save(AtomicFile.of(file, SavingProcess.NUMBERED), SavingProcess.versionOf(file) + 1);
            }
            assertThat(temporaryFiles())
                    .as("left behind after the next start or save")
                    .isEmpty();
        }
        System.out.println("KilledSaveTest: " + kills + " kills, " + leftBehind
                + " of them left a temporary file, 0 after the next start or save; 0 lost");
    }

    /** Told to end, the program clears up itself. */
    @Test
    void interrupted() throws Exception {
        Random random = new Random(LongRun.seed(KilledSaveTest.class));
        int interrupts = LongRun.tries(3, 25);
        for (int i = 0; i < interrupts; i++) {
            SavingProcess process = SavingProcess.withoutEnd(file);
            Thread.sleep(random.nextInt(LONGEST_MS));
            process.interrupt();
            assertBothAreWhole();
            assertThat(temporaryFiles()).isEmpty();
        }
        System.out.println("KilledSaveTest: " + interrupts + " interrupts, 0 left behind, 0 lost");
    }

    /** Each raises the version by one, from what is there: where one were lost, the sum would be too small. */
    @Test
    void twoProcessesAtOnce() throws Exception {
        int each = LongRun.tries(20, 500);
        SavingProcess.save(AtomicFile.of(file, SavingProcess.NUMBERED), 1);
        SavingProcess one = SavingProcess.counting(file, each);
        SavingProcess other = SavingProcess.counting(file, each);
        assertThat(one.end()).isZero();
        assertThat(other.end()).isZero();
        assertThat(SavingProcess.versionOf(file)).isEqualTo(1 + 2 * each);
        assertThat(SavingProcess.versionOf(Backup.of(file))).isEqualTo(2 * each);
        assertThat(temporaryFiles()).isEmpty();
        System.out.println("KilledSaveTest: two processes, " + 2 * each + " saves, 0 lost");
    }

    /** What another process is writing is not what one left behind. */
    @Test
    void whatIsBeingWrittenElsewhereIsLeftAlone() throws Exception {
        SavingProcess process = SavingProcess.withoutEnd(file);
        for (int i = 0; i < 200; i++) {
            UnfinishedFiles.removeFrom(folder);
            UnfinishedFiles.removeAll();
        }
        int before = SavingProcess.versionOf(file);
        for (int waited = 0; waited < 600 && SavingProcess.versionOf(file) == before; waited++) {
            Thread.sleep(100);
        }
        assertThat(SavingProcess.versionOf(file)).as("it goes on saving").isGreaterThan(before);
        process.kill();
    }

    private void assertBothAreWhole() throws IOException {
        int version = SavingProcess.versionOf(file);
        if (Files.exists(Backup.of(file))) {
            assertThat(SavingProcess.versionOf(Backup.of(file))).isBetween(version - 2, version);
        }
    }

    private List<Path> temporaryFiles() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> !f.equals(file) && !f.equals(Backup.of(file)))
                    .toList();
        }
    }
}
