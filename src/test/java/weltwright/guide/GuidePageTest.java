package weltwright.guide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ResourceBundle;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The guide has one text for site, window and command line. */
class GuidePageTest {
    private static final Path SITE = Path.of("src", "site", "markdown", "guide");

    @ParameterizedTest
    @ValueSource(strings = {"", "de"})
    void hasAPageForEachFileOfTheSite(String folder) throws IOException {
        try (Stream<Path> files = Files.list(SITE.resolve(folder))) {
            assertThat(files.filter(Files::isRegularFile)
                            .map(file -> GuidePage.of(file.getFileName().toString())))
                    .hasSize(GuidePage.values().length)
                    .allMatch(page -> page.isPresent());
        }
    }

    @ParameterizedTest
    @EnumSource(GuidePage.class)
    void linksOnlyToPagesThatThereAre(GuidePage page) {
        assertThat(page.title()).isNotBlank();
        assertThat(Pattern.compile("href=\"([^\"]+)\"")
                        .matcher(page.html())
                        .results()
                        .map(link -> link.group(1)))
                .allSatisfy(link -> assertThat(GuidePage.of(link)).isPresent());
    }

    /**
     * No word of the page gets lost on the way to plain text, and only commands are longer than the terminal's line.
     */
    @ParameterizedTest
    @EnumSource(GuidePage.class)
    void saysAsPlainTextWhatTheSiteSays(GuidePage page) throws IOException {
        String text = page.text(72);
        assertThat(text.lines()).allMatch(line -> line.length() <= 72 || line.startsWith("    java "));
        String source = Files.readString(SITE.resolve(page.id() + ".md"))
                .replaceAll("(?m)^\\|[^\\n]*\\|\\n(?=\\|[-|]+\\|)", "") // the head of a table
                .replaceAll("\\]\\([^)]*\\)", "");
        assertThat(words(text)).containsAll(words(source).toList());
    }

    /** The words in the help of {@code make} are those of the guide. */
    @Test
    void explainsTheWordsOfTheTradeAsTheCommandLineDoes() {
        String footer = ResourceBundle.getBundle("weltwright.app.cli.help").getString("weltwright.make.usage.footer.7");
        String guide = GuidePage.WORDS.text(1000);
        assertThat(Pattern.compile("([a-z ]+: [^.]+)\\.")
                        .matcher(footer)
                        .results()
                        .map(MatchResult::group))
                .hasSizeGreaterThan(5)
                .allSatisfy(word -> assertThat(guide).contains(word.strip().replaceAll("\\.$", "")));
    }

    private static Stream<String> words(String text) {
        return Pattern.compile("[\\p{L}\\p{N}]+").matcher(text).results().map(MatchResult::group);
    }
}
