package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.trace.ground.GroundChoice;

/**
 * Scenes harder than a maker should photograph, rendered by a renderer that knows nothing of the project (see
 * {@code src/test/scenes}), in pictures of 3 megapixels: clutter, hard lamps, a knife over the frame, a guard.
 */
class RenderedScenesTest {
    private static final Path SCENES = Path.of("src", "test", "resources", "scenes");

    @ParameterizedTest
    @CsvSource({
        "recurve-sheet-a4, sheet, 0.3",
        "hunter-sheet-letter, sheet, 0.5",
        "skinner-sheet-letter, sheet, 0.9",
        "skinner-sheet-a4, sheet, 1.5",
        "recurve-mat-inch, ruled:12.7mm, 0.35",
        "tanto-graph, ruled:5mm, 0.55"
    })
    void tracesMostOfTheOutlineInHardScenes(String name, String ground, double mostP95Mm) throws IOException {
        GroundTruthPhoto photo = GroundTruthPhoto.read(SCENES, name);
        Trace trace = photo.trace(GroundChoice.parse(ground));
        double p95Mm = photo.measure(trace).p95Mm();
        assertThat(p95Mm).isLessThan(mostP95Mm);
        assertThat(trace.error().error95Mm()).as("claimed error").isGreaterThan(p95Mm / 2);
        boolean mirrored = photo.truth().get("mirrored_in_photo").asBoolean();
        assertThat(trace.silhouette().spineOnLeft()).as("spine side").isEqualTo(!mirrored);
    }
}
