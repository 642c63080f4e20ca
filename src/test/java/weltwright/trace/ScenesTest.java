package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.ground.GroundChoice;

/**
 * Scenes harder than a maker should photograph, rendered by a renderer that knows nothing of the project (see
 * {@code src/test/scenes}), in pictures of 3 megapixels: clutter, hard lamps, a knife over the frame, a guard.
 */
class ScenesTest {
    private static final Path SCENES = Path.of("src", "test", "resources", "scenes");

    @ParameterizedTest
    @CsvSource({
        "recurve-sheet-a4, sheet, 0.7",
        "recurve-mat-inch, ruled:12.7mm, 0.4",
        "tanto-graph, ruled:5mm, 0.45"
    })
    void tracesMostOfTheOutlineInHardScenes(String name, String ground, double mostP95Mm) throws IOException {
        KnownPhoto photo = KnownPhoto.read(SCENES, name);
        assertThat(photo.measure(photo.trace(GroundChoice.parse(ground))).p95Mm()).isLessThan(mostP95Mm);
    }
}
