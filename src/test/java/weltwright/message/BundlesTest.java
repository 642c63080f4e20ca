package weltwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The bundles against the sources of their packages. */
class BundlesTest {
    private static final Path RESOURCES = Path.of("src", "main", "resources");
    private static final Path SOURCES = Path.of("src", "main", "java");
    private static final String BUNDLE = "messages.properties";

    /** A message that is asked for by a whole key, of a variable by one of the names that messages have here. */
    private static final Pattern ASKED = Pattern.compile("(?:\\b(?:TEXTS|MESSAGES|WORDS|texts|messages|in|inUnit)"
            + "|Messages\\.of\\(\\w+\\.class\\))\\s*\\.text\\(\\s*\"([^\"]+)\"\\s*[,)]");

    private static final Pattern LITERAL = Pattern.compile("\"([^\"\\\\\\n]+)\"");

    static Stream<Path> bundles() throws IOException {
        try (Stream<Path> files = Files.walk(RESOURCES)) {
            return files.filter(file -> file.endsWith(BUNDLE)).toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everyMessageThatIsAskedForIsThere(Path bundle) throws IOException {
        assertThat(keys(bundle)).containsAll(found(ASKED, bundle));
    }

    /** A key occurs whole, or begins as a literal to which the rest is added. */
    @ParameterizedTest
    @MethodSource("bundles")
    void everyMessageIsAskedFor(Path bundle) throws IOException {
        Set<String> literals = found(LITERAL, bundle);
        Set<String> beginnings = literals.stream()
                .filter(literal -> literal.endsWith(".") || literal.endsWith("-"))
                .collect(Collectors.toSet());
        assertThat(keys(bundle))
                .allSatisfy(key -> assertThat(literals.contains(key)
                                || beginnings.stream().anyMatch(key::startsWith)
                                || beginsWithALiteral(key, literals))
                        .as(key)
                        .isTrue());
    }

    /** A single apostrophe would swallow what follows it, but for one round a brace. */
    @ParameterizedTest
    @MethodSource("bundles")
    void apostrophesAreDoubled(Path bundle) throws IOException {
        assertThat(load(bundle))
                .allSatisfy((key, text) -> assertThat(
                                text.toString().replace("''", "").replaceAll("'[{}]'", ""))
                        .as(key.toString())
                        .doesNotContain("'"));
    }

    /** As in {@code "editor.name"}, to which {@code ".tip"} is added. */
    private static boolean beginsWithALiteral(String key, Set<String> literals) {
        int dot = key.lastIndexOf('.');
        return dot > 0 && literals.contains(key.substring(0, dot));
    }

    private static Set<String> keys(Path bundle) throws IOException {
        return load(bundle).stringPropertyNames();
    }

    private static Properties load(Path bundle) throws IOException {
        Properties properties = new Properties();
        try (Reader reader = Files.newBufferedReader(bundle)) {
            properties.load(reader);
        }
        return properties;
    }

    /** Returns the first groups of the matches in the sources of a bundle's package. */
    private static Set<String> found(Pattern pattern, Path bundle) throws IOException {
        Path sources = SOURCES.resolve(RESOURCES.relativize(bundle).getParent());
        Set<String> found = new TreeSet<>();
        try (Stream<Path> files = Files.list(sources)) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                pattern.matcher(Files.readString(file))
                        .results()
                        .map((MatchResult match) -> match.group(1))
                        .forEach(found::add);
            }
        }
        return found;
    }
}
