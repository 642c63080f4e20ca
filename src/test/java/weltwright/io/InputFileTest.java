package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import weltwright.error.UserFacingException;

class InputFileTest {
    @TempDir
    Path folder;

    @Test
    void readsAFileUpToItsBound() throws IOException {
        Path file = Files.write(folder.resolve("a"), new byte[1000]);
        assertThat(InputFile.read(file, 1000, "b")).hasSize(1000);
        assertThatThrownBy(() -> InputFile.read(file, 999, "knife.jpg"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining("knife.jpg");
    }

    /** Takes no room on the disk; read, it would fill any memory. */
    @Test
    void doesNotReadAFileThatIsTooLarge() throws IOException {
        Path file = folder.resolve("a");
        try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
            large.setLength(1L << 41);
        }
        assertThatThrownBy(() -> InputFile.read(file, 200_000_000, "knife.jpg"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("200 MB");
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void refusesPipesDevicesAndFoldersAtOnce() throws IOException, InterruptedException {
        Path pipe = folder.resolve("pipe");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        for (Path file :
                new Path[] {pipe, Path.of("/dev/zero"), Path.of("/dev/null"), folder, folder.resolve("none")}) {
            Assertions.assertTimeoutPreemptively(
                    Duration.ofSeconds(20),
                    () -> assertThatThrownBy(() -> InputFile.read(file, 1000, "knife.jpg"))
                            .isInstanceOf(UserFacingException.class)
                            .hasMessageContaining(file.toString()));
        }
    }

    /** Files in Linux's /proc say that they hold nothing. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void keepsItsBoundOnWhatIsRead() {
        assertThatThrownBy(() -> InputFile.read(Path.of("/proc/self/maps"), 100, "knife.jpg"))
                .isInstanceOf(UserFacingException.class);
    }
}
