package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.guide.GuidePage;
import weltwright.io.UserDirectory;

/** Loading what an earlier start has unpacked. */
final class OpenCvLibrariesTest {
    @TempDir
    private Path folder;

    /** A library that is loaded may be loaded again. */
    @Test
    void loadsAllThatWasUnpacked() throws IOException {
        OpenCvLibraries.load();
        assertThat(OpenCvLibraries.loadUnpacked(UserDirectory.CACHE.path())).isTrue();
    }

    /** Files of other versions are deleted before, so all that is there was unpacked by this one. */
    @Test
    void takesAsMuchRoomAsTheGuideSays() throws IOException {
        OpenCvLibraries.load();
        long bytes;
        try (Stream<Path> files = Files.walk(UserDirectory.CACHE.path())) {
            bytes = files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .mapToLong(file -> file.toFile().length())
                    .sum();
        }
        assertThat(bytes / 1e6).isCloseTo(OpenCvLibraries.UNPACKED_MB, within(10.0));
        assertThat(GuidePage.PRIVACY.text(10_000)).contains("takes " + OpenCvLibraries.UNPACKED_MB + " MB");
    }

    @Test
    void tellsWhereSomethingIsMissing() throws IOException {
        assertThat(OpenCvLibraries.loadUnpacked(folder)).isFalse();
        Path inside = Files.createDirectories(folder.resolve("opencv.jar"));
        Files.writeString(inside.resolve(System.mapLibraryName("opencv_java")), "no library");
        assertThat(OpenCvLibraries.loadUnpacked(folder)).isFalse();
    }

    /** As JavaCPP and glibc say it on a Debian with a JDK without a display. */
    @Test
    void tellsWhichLibraryTheComputerLacks() {
        Throwable cause = new UnsatisfiedLinkError("no jniopencv_highgui in java.library.path: /usr/lib")
                .initCause(new UnsatisfiedLinkError("/home/anouk/.cache/weltwright/libjniopencv_highgui.so:"
                        + " libgtk-x11-2.0.so.0: cannot open shared object file: No such file or directory"));
        assertThat(OpenCvLibraries.unusable(folder, cause))
                .hasMessageContaining("needs the library libgtk-x11-2.0.so.0, and this computer has none.")
                .hasMessageContaining("libgtk2.0-0");
        assertThat(OpenCvLibraries.unusable(folder, new UnsatisfiedLinkError("failed to map segment")))
                .hasMessageContaining("could not be unpacked");
    }
}
