package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.error.UserFacingException;
import weltwright.io.DirectoryListing;

/**
 * Checks who may write to the directory that code is loaded from, by the rules of POSIX.1 (chmod, sticky bit, symbolic
 * links).
 */
class PrivateCacheDirectoryTest {
    @TempDir
    Path home;

    @BeforeEach
    void assumeUnix() {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("unix"));
    }

    @Test
    void isCreatedWithPermissionsForTheUserOnly() throws IOException {
        Path folder = PrivateCacheDirectory.secured(home.resolve("cache/weltwright"));
        assertThat(permissions(folder)).isEqualTo("rwx------");
        assertThat(DirectoryListing.of(folder)).isEmpty();
    }

    @Test
    void keepsItsContent() throws IOException {
        Path folder = PrivateCacheDirectory.secured(home.resolve("weltwright"));
        Path library = Files.writeString(folder.resolve("library"), "kept");
        assertThat(PrivateCacheDirectory.secured(folder)).isEqualTo(folder);
        assertThat(library).hasContent("kept");
    }

    @Test
    void emptiesAndClosesADirectoryThatOthersCanWriteTo() throws IOException {
        Path outside = Files.writeString(home.resolve("outside"), "not in it");
        Path folder = Files.createDirectories(home.resolve("weltwright"));
        Path deep = Files.createDirectories(folder.resolve("opencv.jar/org"));
        Files.writeString(deep.resolve("planted.so"), "planted");
        Files.createSymbolicLink(deep.resolve("link.so"), outside);
        permit(folder, "rwxrwxrwx");
        PrivateCacheDirectory.secured(folder);
        assertThat(permissions(folder)).isEqualTo("rwx------");
        assertThat(DirectoryListing.of(folder)).isEmpty();
        assertThat(outside).hasContent("not in it");
    }

    @Test
    void refusesALinkInItsPlace() throws IOException {
        Path elsewhere = Files.createDirectory(home.resolve("elsewhere"));
        Path link = Files.createSymbolicLink(home.resolve("weltwright"), elsewhere);
        assertThatThrownBy(() -> PrivateCacheDirectory.secured(link))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("a link")
                .hasMessageContaining("Have it made yours alone");
        assertThat(DirectoryListing.of(elsewhere)).isEmpty();
    }

    /** The whole cache may be moved to another disk. */
    @Test
    void followsALinkAboveIt() throws IOException {
        Path disk = Files.createDirectory(home.resolve("disk"));
        Path link = Files.createSymbolicLink(home.resolve("cache"), disk);
        assertThat(PrivateCacheDirectory.secured(link.resolve("weltwright")))
                .isEqualTo(disk.toRealPath().resolve("weltwright"));
    }

    @Test
    void refusesAParentThatOthersCanWriteTo() throws IOException {
        Path open = Files.createDirectory(home.resolve("open"));
        permit(open, "rwxrwxrwx");
        assertThatThrownBy(() -> PrivateCacheDirectory.secured(open.resolve("weltwright")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(open + " can be changed by other users");
        Files.setAttribute(open, "unix:mode", 01777); // as /tmp
        PrivateCacheDirectory.secured(open.resolve("weltwright"));
    }

    @Test
    void refusesAnotherUsersDirectory() throws IOException {
        assumeTrue("root".equals(System.getProperty("user.name")), "only root can give a folder away");
        Path folder = Files.createDirectory(home.resolve("weltwright"));
        Files.setAttribute(folder, "unix:uid", 12345);
        assertThatThrownBy(() -> PrivateCacheDirectory.secured(folder))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("belongs to another user");
    }

    @Test
    void namesTheSettingWhereItCannotBeCreated() throws IOException {
        Path file = Files.writeString(home.resolve("cache"), "no folder");
        assertThatThrownBy(() -> PrivateCacheDirectory.secured(file.resolve("weltwright")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("cannot be written")
                .hasMessageContaining("160 MB");
    }

    private static void permit(Path path, String permissions) throws IOException {
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
    }

    private static String permissions(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }
}
