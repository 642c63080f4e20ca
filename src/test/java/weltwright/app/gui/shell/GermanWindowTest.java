package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.VirtualDisplay;

/** The window in German, against the window in English: a text that is the same in both is a word left in the code. */
class GermanWindowTest {
    /** Sizes, times, codes of currencies, sizes of paper, and names. */
    private static final Pattern SAME = Pattern.compile(
            "(\\P{L}|\\b(mm|in|min|h|K|[A-Z]{3}|A\\d)\\b)*|(Letter|Tabloid)…?|Name|Ring|Weltwright|PDF|SVG|DXF");

    @TempDir
    Path folder;

    @Test
    void saysNothingInEnglish() throws Exception {
        VirtualDisplay.assumeThere();
        Process inEnglish = start("en");
        Process inGerman = start("de");
        Set<String> english = texts(inEnglish, "en");
        Set<String> german = texts(inGerman, "de");
        assertThat(english).hasSizeGreaterThan(500).noneMatch(text -> text.startsWith("twice:"));
        assertThat(german).hasSizeGreaterThan(500).noneMatch(text -> text.startsWith("twice:"));
        assertThat(german)
                .filteredOn(english::contains)
                .allSatisfy(text -> assertThat(text).matches(SAME));
    }

    private Process start(String language) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Duser.language=" + language,
                        "-classpath",
                        System.getProperty("java.class.path"),
                        WindowTexts.class.getName(),
                        folder.resolve(language).toString())
                .redirectOutput(folder.resolve(language + ".txt").toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    private Set<String> texts(Process window, String language) throws IOException, InterruptedException {
        assertThat(window.waitFor()).isZero();
        return new LinkedHashSet<>(Files.readAllLines(folder.resolve(language + ".txt")));
    }
}
