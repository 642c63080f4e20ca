package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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

    @Test
    void tellsWhereSomethingIsMissing() throws IOException {
        assertThat(OpenCvLibraries.loadUnpacked(folder)).isFalse();
        Path inside = Files.createDirectories(folder.resolve("opencv.jar"));
        Files.writeString(inside.resolve(System.mapLibraryName("opencv_java")), "no library");
        assertThat(OpenCvLibraries.loadUnpacked(folder)).isFalse();
    }
}
