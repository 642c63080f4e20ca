package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is made from a photo is the same to the last byte on one processor and on two. */
class ReproducibilityTest {
    @TempDir
    Path folder;

    @Test
    void doesNotDependOnTheNumberOfProcessors() throws Exception {
        Path java = Path.of(System.getProperty("java.home"));
        Map<String, String> one = ReproducibilityReport.hashes("drop-point", java, 1, folder);
        assertThat(one).containsKeys("drop-point.wwj", "drop-point-pattern.pdf", "drop-point-pattern.dxf");
        assertThat(ReproducibilityReport.hashes("drop-point", java, 2, folder)).isEqualTo(one);
    }
}
