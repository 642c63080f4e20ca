package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds what the documents for developers name to what is there: classes, files that they link to. */
class DocumentationTest {
    private static final Path SITE = Path.of("src", "site", "markdown");
    private static final Pattern CLASS = Pattern.compile("`([A-Z][a-z]\\w+)(?:\\.\\w+)?`");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)\\)");

    /** Of libraries. */
    private static final Set<String> FOREIGN = Set.of("Mat");

    @Test
    void namesClassesThatThereAre() throws IOException {
        Set<String> there;
        try (Stream<Path> sources = Files.walk(Path.of("src"))) {
            there = sources.map(path -> path.getFileName().toString())
                    .filter(name -> name.endsWith(".java"))
                    .map(name -> name.replace(".java", ""))
                    .collect(Collectors.toSet());
        }
        for (Path document : documents()) {
            assertThat(found(CLASS, document).filter(name -> !FOREIGN.contains(name)))
                    .as(document.toString())
                    .isSubsetOf(there);
        }
    }

    @Test
    void linksToFilesThatThereAre() throws IOException {
        for (Path document : documents()) {
            assertThat(found(LINK, document))
                    .as(document.toString())
                    .allSatisfy(
                            link -> assertThat(document.resolveSibling(link)).exists());
        }
    }

    private static Stream<String> found(Pattern pattern, Path document) throws IOException {
        List<MatchResult> results =
                pattern.matcher(Files.readString(document)).results().toList();
        return results.stream().map(result -> result.group(1));
    }

    private static List<Path> documents() throws IOException {
        List<Path> documents = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        try (Stream<Path> site = Files.walk(SITE)) {
            site.filter(path -> path.toString().endsWith(".md")).forEach(documents::add);
        }
        return documents;
    }
}
