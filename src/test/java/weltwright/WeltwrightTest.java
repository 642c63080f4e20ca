package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as its users start it: a process of its own, its outputs piped. */
class WeltwrightTest {
    @TempDir
    Path folder;

    @Test
    void withoutAScreenItSaysWhatElseItCanDo() throws Exception {
        Ended ended = start();
        assertThat(ended.err().strip()).startsWith("There is no screen").doesNotContain("\n").contains("--help");
        assertThat(ended.out()).isEmpty();
        assertThat(ended.code()).isEqualTo(1);
    }

    /** OpenCV draws the sheet's markers: its natives must load without a word. */
    @Test
    void isSilentInAPipeButForWhatWasDone() throws Exception {
        Path sheet = folder.resolve("sheet.pdf");
        Ended ended = start("sheet", "-o", sheet.toString());
        assertThat(ended.err()).isEmpty();
        assertThat(ended.out().strip()).isEqualTo("Written: " + sheet);
        assertThat(ended.code()).isZero();
    }

    @Test
    void endsWithACodeThatTellsWhatKindOfFailureItWas() throws Exception {
        Ended trouble = start("trace", folder.resolve("none.jpg").toString(), "-o", "knife.json");
        assertThat(trouble.code()).isEqualTo(1);
        assertThat(trouble.err().strip()).startsWith("There is no file").doesNotContain("\n");
        Ended misuse = start("carve");
        assertThat(misuse.code()).isEqualTo(2);
        assertThat(misuse.err().strip()).contains("--help").doesNotContain("\n");
    }

    /** As this test's, without the logger that only the tests' own libraries bring. */
    private static String classPath() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.contains("slf4j"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    private record Ended(int code, String out, String err) {}

    private Ended start(String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                classPath(),
                Weltwright.class.getName()));
        command.addAll(List.of(args));
        Path out = folder.resolve("out.txt");
        Path err = folder.resolve("err.txt");
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        int code = process.waitFor();
        return new Ended(
                code,
                Files.readString(out, Charset.defaultCharset()),
                Files.readString(err, Charset.defaultCharset()));
    }
}
