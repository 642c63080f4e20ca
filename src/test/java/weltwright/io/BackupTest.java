package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.error.UserFacingException;

/** The version before, and files that somebody else changes meanwhile. */
class BackupTest {
    private static final Instant LONG_AGO = Instant.parse("2024-02-29T12:00:00Z");

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("job.txt");
    }

    private FileVersion write(String text) {
        return write(AtomicFile.of(file, AtomicFileTest.TEXT).withBackup(), text);
    }

    private FileVersion write(FileVersion expected, String text) {
        return write(AtomicFile.of(file, AtomicFileTest.TEXT).withBackup().expecting(expected), text);
    }

    private static FileVersion write(AtomicFile file, String text) {
        return file.write(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void theVersionBeforeIsKept() throws IOException {
        write("first");
        assertThat(DirectoryListing.of(folder)).containsExactly(file);
        Files.setLastModifiedTime(file, FileTime.from(LONG_AGO));
        write("second");
        assertThat(Backup.of(file)).hasContent("first").hasFileName("job.txt.bak");
        assertThat(Files.getLastModifiedTime(Backup.of(file)).toInstant()).isEqualTo(LONG_AGO);
        write("third");
        assertThat(Backup.of(file)).hasContent("second");
        assertThat(DirectoryListing.of(folder)).containsExactlyInAnyOrder(file, Backup.of(file));
    }

    @Test
    void writtenAgainTheSameItDoesNotPushOutTheVersionBefore() {
        write("first");
        write("second");
        write("second");
        assertThat(file).hasContent("second");
        assertThat(Backup.of(file)).hasContent("first");
    }

    /** NAME_MAX is 255 bytes; é takes two in UTF-8 (RFC 3629), a knife from beyond the basic plane four. */
    @Test
    void theLongestNameHasABackupToo() {
        for (String letter : List.of("n", "é", "\uD83D\uDD2A")) {
            int bytes = letter.getBytes(StandardCharsets.UTF_8).length;
            file = folder.resolve(letter.repeat(251 / bytes) + ".txt");
            write("first");
            write("second");
            assertThat(file).hasContent("second");
            assertThat(Backup.of(file)).hasContent("first");
        }
    }

    @Test
    void whatIsNoBackupIsNotReplacedByOne() throws IOException {
        write("first");
        byte[] picture = {(byte) 0xFF, (byte) 0xD8};
        Files.write(Backup.of(file), picture);
        assertThatThrownBy(() -> write("second"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("job.txt.bak");
        assertThat(file).hasContent("first");
        assertThat(Backup.of(file)).hasBinaryContent(picture);
        assertThat(DirectoryListing.of(folder)).hasSize(2);
    }

    @Test
    void whatSomebodyElseWroteMeanwhileStays() throws IOException {
        FileVersion opened = write("first");
        Files.writeString(file, "theirs");
        assertThatThrownBy(() -> write(opened, "ours")).isInstanceOf(FileChangedException.class);
        assertThat(file).hasContent("theirs");
        assertThat(write(FileVersion.of(file), "ours after all")).isEqualTo(FileVersion.of(file));
        assertThat(Backup.of(file)).hasContent("theirs");
    }

    @Test
    void aFileThatCameMeanwhileStays() throws IOException {
        FileVersion none = FileVersion.of(file);
        Files.writeString(file, "theirs");
        assertThatThrownBy(() -> write(none, "ours")).isInstanceOf(FileChangedException.class);
        assertThat(file).hasContent("theirs");
    }

    /** Programs that synchronise folders do the first, people the second. */
    @Test
    void anotherTimeIsNoChangeAndAFileThatIsGoneIsWrittenAnew() throws IOException {
        FileVersion opened = write("first");
        Files.setLastModifiedTime(file, FileTime.from(LONG_AGO));
        FileVersion saved = write(opened, "second");
        Files.delete(file);
        write(saved, "third");
        assertThat(file).hasContent("third");
    }

    /** Each thread counts on by reading, adding a letter and writing: a letter lost would be an update lost. */
    @Test
    void ofTwoThatWriteAtOnceTheSecondSeesWhatTheFirstWrote() throws Exception {
        write("");
        int threads = 4;
        int each = 25;
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        List<Future<?>> all = new ArrayList<>();
        for (int i = 0; i < threads; i++) {
            all.add(pool.submit(() -> {
                for (int written = 0; written < each; ) {
                    FileVersion before = FileVersion.of(file);
                    String text = Files.readString(file);
                    try {
                        write(before, text + "x");
                        written++;
                    } catch (FileChangedException e) {
                        Thread.yield(); // and read it again
                    }
                }
                return null;
            }));
        }
        for (Future<?> one : all) {
            one.get();
        }
        pool.shutdown();
        assertThat(file).hasContent("x".repeat(threads * each));
    }
}
