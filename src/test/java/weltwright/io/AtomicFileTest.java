package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.trouble.Trouble;

class AtomicFileTest {
    private static final FileKind TEXT = FileKind.of("a text", "^[a-z ]*$");

    @TempDir
    Path folder;

    @Test
    void theFileTakesTheOldOnesPlace() throws IOException {
        Path file = folder.resolve("job.txt");
        Files.writeString(file, "old and longer");
        AtomicFile.of(file, TEXT).write(out -> out.write("new".getBytes(StandardCharsets.UTF_8)));
        assertThat(file).hasContent("new");
        assertThat(folder).isDirectoryContaining(file::equals).isDirectoryNotContaining(f -> !f.equals(file));
    }

    @Test
    void whatFailsHalfWayLeavesTheOldFileAndNothingElse() throws IOException {
        Path file = folder.resolve("job.txt");
        Files.writeString(file, "old");
        assertThatThrownBy(() -> AtomicFile.of(file, TEXT).write(out -> {
                    out.write(1);
                    throw new IOException("no space left on device");
                }))
                .isInstanceOf(Trouble.class)
                .hasMessageContaining(file.toString());
        assertThat(file).hasContent("old");
        assertThat(folder).isDirectoryNotContaining(f -> !f.equals(file));
    }

    @Test
    void aDefectOfTheProgramLeavesNothingEither() {
        Path file = folder.resolve("job.txt");
        assertThatThrownBy(() -> AtomicFile.of(file, TEXT).write(out -> {
                    out.write(1);
                    throw new IllegalStateException("a defect");
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void aMissingFolderIsToldAndNotMade() {
        Path file = folder.resolve("not there").resolve("job.txt");
        assertThatThrownBy(() -> AtomicFile.of(file, TEXT).write(out -> out.write(1)))
                .isInstanceOf(Trouble.class)
                .hasMessageContaining("not there")
                .hasMessageContaining("choose another folder");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void aFolderThatIsAFileIsTold() throws IOException {
        Path notAFolder = Files.createFile(folder.resolve("file"));
        assertThatThrownBy(() -> AtomicFile.of(notAFolder.resolve("job.txt"), TEXT).write(out -> out.write(1)))
                .isInstanceOf(Trouble.class);
    }

    @Test
    void aFolderIsNotOverwritten() throws IOException {
        Path taken = Files.createDirectory(folder.resolve("pattern.pdf"));
        assertThatThrownBy(() -> AtomicFile.of(taken, TEXT).write(out -> out.write(1)))
                .isInstanceOf(Trouble.class)
                .hasMessageContaining("is a folder");
        assertThat(folder).isDirectoryNotContaining(f -> !f.equals(taken));
    }
}
