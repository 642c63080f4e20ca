package weltwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as its users start it: a process of its own, its outputs piped. */
class WeltwrightTest {
    @TempDir
    Path folder;

    @Test
    void withoutAScreenItSaysWhatElseItCanDo() throws Exception {
        ProgramProcess ended = start();
        assertThat(ended.err().strip())
                .startsWith("There is no screen")
                .doesNotContain("\n")
                .contains("--help");
        assertThat(ended.out()).isEmpty();
        assertThat(ended.code()).isEqualTo(1);
    }

    /** OpenCV draws the sheet's markers: its natives must load without a word. */
    @Test
    void isSilentInAPipeButForWhatWasDone() throws Exception {
        Path sheet = folder.resolve("sheet.pdf");
        ProgramProcess ended = start("sheet", "-o", sheet.toString());
        assertThat(ended.err()).isEmpty();
        assertThat(ended.out().strip()).isEqualTo("Written: " + sheet);
        assertThat(ended.code()).isZero();
    }

    @Test
    void endsWithACodeThatTellsWhatKindOfFailureItWas() throws Exception {
        ProgramProcess trouble = start("trace", folder.resolve("none.jpg").toString(), "-o", "knife.json");
        assertThat(trouble.code()).isEqualTo(1);
        assertThat(trouble.err().strip()).startsWith("There is no file").doesNotContain("\n");
        ProgramProcess misuse = start("carve");
        assertThat(misuse.code()).isEqualTo(2);
        assertThat(misuse.err().strip()).contains("--help").doesNotContain("\n");
    }

    /** Code is loaded from there: what somebody put in a library's place, of its size and age, must not be. */
    @Test
    void aPlantedLibraryIsNotLoaded() throws Exception {
        Path cache = folder.resolve("cache");
        Map<String, String> environment = Map.of("XDG_CACHE_HOME", cache.toString());
        Path sheet = folder.resolve("sheet.pdf");
        assertThat(start(environment, "sheet", "-o", sheet.toString()).code()).isZero();
        List<Path> libraries;
        try (Stream<Path> all = Files.walk(cache)) {
            libraries = all.filter(path -> path.getFileName().toString().contains("opencv_core"))
                    .filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
                    .toList();
        }
        assumeFalse(libraries.isEmpty(), "this system has another place for caches");
        byte[] genuine = Files.readAllBytes(libraries.get(0));
        for (Path library : libraries) {
            FileTime age = Files.getLastModifiedTime(library);
            Files.write(library, new byte[(int) Files.size(library)]);
            Files.setLastModifiedTime(library, age);
        }
        ProgramProcess again =
                start(environment, "sheet", "-o", folder.resolve("again.pdf").toString());
        assertThat(again.err()).isEmpty();
        assertThat(again.code()).isZero();
        assertThat(Files.readAllBytes(libraries.get(0))).isEqualTo(genuine);
    }

    /** Never the common directory for temporary files instead, where anybody may have put something. */
    @Test
    void withoutAFolderForTheImageLibraryItSaysSo() throws Exception {
        Path file = Files.writeString(folder.resolve("cache"), "a file is no folder");
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        ProgramProcess ended = start(
                Map.of(
                        "XDG_CACHE_HOME",
                        file.toString(),
                        "JAVA_TOOL_OPTIONS",
                        "-Duser.home=" + file + " -Djava.io.tmpdir=" + temporary),
                "sheet",
                "-o",
                folder.resolve("sheet.pdf").toString());
        assertThat(ended.code()).isEqualTo(1);
        assertThat(ended.err().lines().filter(line -> !line.startsWith("Picked up JAVA_TOOL_OPTIONS")))
                .singleElement()
                .asString()
                .contains(file.toString(), "cannot be written", "160 MB");
        assertThat(temporary).isEmptyDirectory();
    }

    private ProgramProcess start(String... args) throws IOException, InterruptedException {
        return start(Map.of(), args);
    }

    private ProgramProcess start(Map<String, String> environment, String... args)
            throws IOException, InterruptedException {
        return ProgramProcess.run(folder, List.of(), environment, args);
    }
}
