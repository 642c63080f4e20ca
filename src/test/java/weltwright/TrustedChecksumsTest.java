package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The libraries that the program is built and tested with are those whose SHA-256 the project has recorded. Maven 3.9
 * and later check that themselves, plugins too (.mvn/maven.config); 3.8 does not know how.
 */
class TrustedChecksumsTest {
    private static final Path CHECKSUMS = Path.of(".mvn", "checksums", "checksums.sha256");

    /** OpenCV's natives of the platforms on which nobody has recorded them. */
    private static final List<String> OTHER_PLATFORMS = List.of("-linux-arm64", "-windows-", "-macosx-");

    @Test
    void librariesAreTheRecordedOnes() throws Exception {
        Map<String, String> recorded = recorded();
        List<Path> libraries = libraries();
        assertThat(libraries).isNotEmpty();
        for (Path library : libraries) {
            String file = library.toString().replace(File.separatorChar, '/');
            Optional<String> name =
                    recorded.keySet().stream().filter(file::endsWith).findFirst();
            assertThat(name)
                    .as("%s is not in %s; DEVELOPERS.md tells how to record it", file, CHECKSUMS)
                    .isPresent();
            assertThat(sha256(library)).as(file).isEqualTo(recorded.get(name.orElseThrow()));
        }
    }

    private static Map<String, String> recorded() throws IOException {
        try (Stream<String> lines = Files.lines(CHECKSUMS)) {
            return lines.map(line -> line.split(" +", 2)).collect(Collectors.toMap(line -> line[1], line -> line[0]));
        }
    }

    private static List<Path> libraries() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> entry.endsWith(".jar"))
                .filter(entry -> OTHER_PLATFORMS.stream().noneMatch(entry::contains))
                .map(Path::of)
                .filter(entry -> !entry.getFileName().toString().startsWith("surefire"))
                .toList();
    }

    private static String sha256(Path file) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }
}
