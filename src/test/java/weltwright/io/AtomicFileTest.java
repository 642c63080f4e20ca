package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

class AtomicFileTest {
    static final FileKind TEXT = FileKind.of("a text", "^[a-z ]*$");

    @TempDir
    Path folder;

    static FileVersion write(Path file, String text) {
        return AtomicFile.of(file, TEXT).write(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void theFileTakesTheOldOnesPlace() throws IOException {
        Path file = Files.writeString(folder.resolve("job.txt"), "old and longer");
        write(file, "new");
        assertThat(file).hasContent("new");
        assertThat(DirectoryListing.of(folder)).containsExactly(file);
    }

    @Test
    void whatFailsHalfWayLeavesTheOldFileAndNothingElse() throws IOException {
        Path file = Files.writeString(folder.resolve("job.txt"), "old");
        assertThatThrownBy(() -> AtomicFile.of(file, TEXT).write(out -> {
                    out.write(1);
                    throw new IOException("no space left on device");
                }))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(file.toString());
        assertThat(file).hasContent("old");
        assertThat(DirectoryListing.of(folder)).containsExactly(file);
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
        assertRefused(file, "not there", "choose another folder");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void aFolderThatIsAFileIsTold() throws IOException {
        Path notAFolder = Files.createFile(folder.resolve("file"));
        assertRefused(notAFolder.resolve("job.txt"), "There is no folder");
    }

    @Test
    void aFolderIsNotOverwritten() throws IOException {
        Path taken = Files.createDirectory(folder.resolve("pattern.pdf"));
        assertRefused(taken, "is a folder");
        assertThat(DirectoryListing.of(folder)).containsExactly(taken);
    }

    @Test
    void aFileOfAnotherKindIsNotOverwrittenByWhateverNameItIsCalled() throws IOException {
        Path picture = Files.write(folder.resolve("knife.jpg"), new byte[] {(byte) 0xFF, (byte) 0xD8, 1});
        Path link = Files.createSymbolicLink(folder.resolve("link"), picture);
        Path hardLink = Files.createLink(folder.resolve("hard-link"), picture);
        Path roundabout = Files.createDirectory(folder.resolve("sub")).resolve("../knife.jpg");
        for (Path name : new Path[] {picture, link, hardLink, roundabout}) {
            assertRefused(name, name.toString(), "is not a text");
        }
        assertThat(picture).hasBinaryContent(new byte[] {(byte) 0xFF, (byte) 0xD8, 1});
        assertThat(link).isSymbolicLink();
    }

    /** As of one that was made beforehand to be written into. */
    @Test
    void anEmptyFileMayBeOfAnyKind() throws IOException {
        Path file = Files.createFile(folder.resolve("job.txt"));
        write(file, "new");
        assertThat(file).hasContent("new");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-------", "rw-r--r--", "rw-rw-rw-", "rwxrw----"})
    void permissionsStay(String permissions) throws IOException {
        assumePosix();
        Path file = Files.writeString(folder.resolve("job.txt"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
        write(file, "new");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo(permissions);
    }

    /** Only the superuser can give a file away, so only for it can the test set the stage. */
    @Test
    void theOwnerStays() throws IOException {
        assumePosix();
        Path file = Files.writeString(folder.resolve("job.txt"), "old");
        UserPrincipal somebody =
                file.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody");
        try {
            Files.setOwner(file, somebody);
        } catch (IOException e) {
            assumeTrue(false, "not the superuser");
        }
        write(file, "new");
        assertThat(Files.getOwner(file)).isEqualTo(somebody);
    }

    @Test
    void aProtectedFileIsNotReplaced() throws IOException {
        Path file = Files.writeString(folder.resolve("job.txt"), "old");
        assertThat(file.toFile().setWritable(false, false)).isTrue();
        assertRefused(file, "job.txt is write-protected");
        assertThat(file).hasContent("old");
        assertThat(DirectoryListing.of(folder)).containsExactly(file);
    }

    @Test
    void theFileBehindALinkIsWrittenAndTheLinkStays() throws IOException {
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Path file = Files.writeString(elsewhere.resolve("job.txt"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("job"), Path.of("elsewhere", "job.txt"));
        Path linkToLink = Files.createSymbolicLink(folder.resolve("again"), link);
        write(linkToLink, "new");
        assertThat(file).hasContent("new");
        assertThat(link).isSymbolicLink();
        assertThat(linkToLink).isSymbolicLink();
        assertThat(DirectoryListing.of(elsewhere)).containsExactly(file);
    }

    @Test
    void aLinkMayLeadToAFileThatIsYetToBeMade() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("job"), Path.of("job.txt"));
        write(link, "new");
        assertThat(link).isSymbolicLink();
        assertThat(folder.resolve("job.txt")).hasContent("new");
    }

    @Test
    void aLinkThatLeadsBackToItselfIsTold() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("job"), Path.of("job"));
        assertRefused(link, link.toString());
    }

    /** A pipe that nobody reads would keep the program waiting for ever. */
    @Test
    @Timeout(60)
    void devicesAndPipesAreRefused() throws Exception {
        assumePosix();
        Path pipe = folder.resolve("pipe");
        assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0);
        assertRefused(pipe, "is a device or a pipe");
        assertRefused(Path.of("/dev/null"), "is a device or a pipe");
        assertRefused(Files.createSymbolicLink(folder.resolve("link"), Path.of("/dev/full")), "is a device or a pipe");
    }

    /** NAME_MAX, the longest name that ext4, XFS and Btrfs take, is 255 bytes. */
    @Test
    void theLongestNameThereIsCanBeWritten() {
        Path file = folder.resolve("n".repeat(251) + ".txt");
        write(file, "new");
        write(file, "newer");
        assertThat(file).hasContent("newer");
    }

    private static void assumePosix() {
        assumeTrue(Path.of("").getFileSystem().supportedFileAttributeViews().contains("posix"));
    }

    private static void assertRefused(Path file, String... words) {
        assertThatThrownBy(() -> AtomicFile.of(file, TEXT).check())
                .as("before the work")
                .isInstanceOf(UserFacingException.class)
                .hasMessageContainingAll(words);
        assertThatThrownBy(() -> write(file, "new"))
                .as("after it")
                .isInstanceOf(UserFacingException.class)
                .hasMessageContainingAll(words);
    }
}
