package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The site's menu leads to each of its pages, and to no others. */
class SiteMenuTest {
    private static final Path SITE = Path.of("src", "site");
    private static final Pattern ITEM = Pattern.compile("<item [^>]*href=\"([^\"]+)\\.html\"");

    @Test
    void leadsToEachPage() throws Exception {
        Path pages = SITE.resolve("markdown");
        List<String> there;
        try (Stream<Path> files = Files.walk(pages)) {
            there = files.filter(file -> file.toString().endsWith(".md"))
                    .map(file -> pages.relativize(file).toString().replace('\\', '/'))
                    .map(name -> name.substring(0, name.length() - ".md".length()))
                    .filter(name -> !name.equals("index"))
                    .toList();
        }
        assertThat(ITEM.matcher(Files.readString(SITE.resolve("site.xml")))
                        .results()
                        .map((MatchResult item) -> item.group(1)))
                .containsExactlyInAnyOrderElementsOf(there);
    }
}
