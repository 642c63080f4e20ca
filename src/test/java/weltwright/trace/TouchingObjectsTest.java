package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.image.Photo;

/**
 * Twelve random knives that a pencil or a coin touches, of 2.5 megapixels, rendered by a program that knows nothing of
 * ours, with their true outlines. Strokes of the brush over pencil and coin stand in the truth: at most two, or three
 * where both touch the knife.
 */
class TouchingObjectsTest {
    private static final Path FOLDER = Path.of("src", "test", "resources", "clutter");

    /** Bounds are the 95th percentiles measured plus a fifth. */
    @ParameterizedTest
    @CsvSource({
        "pencil-at-point, 0.37",
        "pencil-under-blade, 0.26",
        "pencil-under-handle, 0.14",
        "pencil-along-back, 2.13",
        "pencil-along-handle, 1.44",
        "pencil-before-point, 1.76",
        "coin-at-point, 0.42",
        "coin-at-belly, 0.36",
        "coin-at-heel, 0.31",
        "coin-at-butt, 0.20",
        "coin-at-back, 0.10",
        "coin-and-pencil, 0.33"
    })
    void strokesTellThemFromTheKnife(String name, double p95Mm) throws IOException {
        TraceOutcome.Found found =
                TraceOutcome.of(GroundTruthPhoto.read(FOLDER, name)).found().orElseThrow();
        assertThat(found.reading().p95Mm()).isLessThan(p95Mm);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pencil-at-point",
                "pencil-under-blade",
                "pencil-under-handle",
                "pencil-along-back",
                "pencil-along-handle",
                "coin-at-point",
                "coin-at-belly",
                "coin-at-heel",
                "coin-at-back",
                "coin-and-pencil"
            })
    void withoutStrokesTheOutlineIsRefusedAndShown(String name) throws IOException {
        GroundTruthPhoto known = GroundTruthPhoto.read(FOLDER, name);
        Photo photo = Photo.read(known.picture());
        assertThatThrownBy(() ->
                        Tracer.trace(photo, known.settings(known.ground()).withMarks(List.of()), ProgressListener.NONE))
                .hasMessageContaining("touches the knife")
                .asInstanceOf(type(RejectedOutlineException.class))
                .satisfies(rejected -> assertThat(rejected.outlinePx())
                        .hasSizeGreaterThan(100)
                        .allSatisfy(px -> {
                            assertThat(px.x())
                                    .isBetween(
                                            0.0,
                                            known.truth().at("/photo/width").asDouble());
                            assertThat(px.y())
                                    .isBetween(
                                            0.0,
                                            known.truth().at("/photo/height").asDouble());
                        }));
    }
}
