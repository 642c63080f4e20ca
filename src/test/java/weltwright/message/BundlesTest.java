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

    /** A beginning of a key, to which the rest is added. */
    private static final Pattern BEGINNING = Pattern.compile("\"([\\w.-]+[.-])\"");

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

    /** A key occurs whole, or its beginning does. */
    @ParameterizedTest
    @MethodSource("bundles")
    void everyMessageIsAskedFor(Path bundle) throws IOException {
        String sources = sources(bundle);
        Set<String> beginnings = found(BEGINNING, bundle);
        assertThat(keys(bundle))
                .allSatisfy(key -> assertThat(sources.contains('"' + key + '"')
                                || beginnings.stream().anyMatch(key::startsWith)
                                || key.contains(".")
                                        && sources.contains('"' + key.substring(0, key.lastIndexOf('.')) + '"'))
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

    static Stream<Path> allBundles() throws IOException {
        return Stream.concat(bundles(), Stream.of(RESOURCES.resolve("weltwright/app/cli/help.properties")));
    }

    /** So that no word is missing in a language, and none of its sentences drops or invents a value. */
    @ParameterizedTest
    @MethodSource("allBundles")
    void germanSaysTheSame(Path bundle) throws IOException {
        Properties english = load(bundle);
        Properties german = load(Path.of(bundle.toString().replace(".properties", "_de.properties")));
        assertThat(german.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
        assertThat(german)
                .allSatisfy((key, text) -> assertThat(values(text.toString()))
                        .as(key.toString())
                        .isEqualTo(values(english.get(key).toString())));
        if (bundle.endsWith(BUNDLE)) {
            apostrophesAreDoubled(Path.of(bundle.toString().replace(".properties", "_de.properties")));
        }
    }

    /** The arguments of a message, with the decimals of lengths, and what the help leaves to be filled in. */
    private static Set<String> values(String text) {
        return Pattern.compile("\\{\\d+(?:,length,[0.]+)?|\\$\\{[^}]+\\}|%n|%%")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .collect(Collectors.toCollection(TreeSet::new));
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

    private static Set<String> found(Pattern pattern, Path bundle) throws IOException {
        return pattern.matcher(sources(bundle))
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns the sources of a bundle's package. */
    private static String sources(Path bundle) throws IOException {
        StringBuilder sources = new StringBuilder();
        try (Stream<Path> files =
                Files.list(SOURCES.resolve(RESOURCES.relativize(bundle).getParent()))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                sources.append(Files.readString(file));
            }
        }
        return sources.toString();
    }
}
