package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.cli.CommandLineApplication;
import weltwright.app.cli.TerminalProgress;

/**
 * What is made from a photo is the same to the last byte in a process of one processor, with the launcher's options,
 * and in this process, which takes all processors and has other options.
 */
class ReproducibilityTest {
    @TempDir
    Path folder;

    @Test
    void doesNotDependOnTheNumberOfProcessors() throws Exception {
        Path java = Path.of(System.getProperty("java.home"));
        Map<String, String> one = ReproducibilityReport.hashes("drop-point", java, 1, folder);
        assertThat(one).containsKeys("drop-point.wwj", "drop-point-pattern.pdf", "drop-point-pattern.dxf");
        Path made = folder.resolve("here");
        StringWriter err = new StringWriter();
        CommandLineApplication.run(
                ReproducibilityReport.make("drop-point", made),
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                TerminalProgress.silent());
        assertThat(err.toString()).isEmpty();
        assertThat(ReproducibilityReport.hashes(made)).isEqualTo(one);
    }
}
