package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.ground.GroundChoice;

/**
 * Photos with known truth: rendered by a program that knows nothing of ours. Skipped where the folder of shared photos
 * is not beside the project.
 */
class SharedPhotosTest {
    private static final Path PHOTOS = Path.of("..", "shared", "photos");

    @ParameterizedTest
    @ValueSource(strings = {"droppoint-sheet-window", "leaf-sheet-letter", "northern-sheet-lamp"})
    void tracesTheTruthOnTheSheet(String name) throws IOException {
        OutlineRuler.Reading reading = tracesTheTruth(name, new GroundChoice.Sheet());
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(0.22);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(0.5);
    }

    @Test
    void tracesTheTruthOnAMat() throws IOException {
        OutlineRuler.Reading reading = tracesTheTruth("droppoint-mat-cm", new GroundChoice.Ruled(10));
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(0.22);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(0.6);
    }

    private static OutlineRuler.Reading tracesTheTruth(String name, GroundChoice ground) throws IOException {
        KnownPhoto photo = photo(name);
        Trace trace = photo.trace(ground);
        OutlineRuler.Reading reading = photo.measure(trace);
        assertThat(trace.silhouette().overallLengthMm()).isCloseTo(photo.number("overall_length"), within(0.4));
        assertThat(trace.silhouette().bladeLengthMm()).isCloseTo(photo.number("blade_length"), within(0.35));
        assertThat(trace.silhouette().spineOnLeft()).as("spine side").isTrue();
        double focalPx = photo.truth().get("photo").get("focal_px").asDouble();
        assertThat(trace.seenFrom().camera().focalPx()).isCloseTo(focalPx, within(0.005 * focalPx));
        assertThat(trace.error().error95Mm()).as("claimed error").isGreaterThan(reading.p95Mm() / 2);
        return reading;
    }

    /** Where steel is as bright as what it lies on, nobody can say where it ends; but it must be said that it is so. */
    @ParameterizedTest
    @CsvSource({"utility-paper-ceiling, paper:a4", "wharncliffe-graph, ruled:5mm"})
    void ownsUpToWhatItHardlySees(String name, String ground) throws IOException {
        KnownPhoto photo = photo(name);
        Trace trace = photo.trace(GroundChoice.parse(ground));
        assertThat(trace.unsure()).isNotEmpty();
        assertThat(trace.error().error95Mm())
                .as("claimed error")
                .isGreaterThan(photo.measure(trace).p95Mm());
    }

    private static KnownPhoto photo(String name) throws IOException {
        assumeTrue(
                Files.exists(PHOTOS.resolve(name + ".jpg")), "the shared photos are not here: " + PHOTOS);
        return KnownPhoto.read(PHOTOS, name);
    }
}
