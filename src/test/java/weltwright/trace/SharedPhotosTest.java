package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.GroundChoice;
import weltwright.measure.PrintScale;
import weltwright.photo.Photo;

/**
 * Photos with known truth: rendered by a program that knows nothing of ours. Skipped where the folder of
 * shared photos is not beside the project.
 */
class SharedPhotosTest {
    private static final Path PHOTOS = Path.of("..", "shared", "photos");

    @ParameterizedTest
    @ValueSource(strings = {"droppoint-sheet-window", "leaf-sheet-letter", "northern-sheet-lamp"})
    void tracesTheTruthOnTheSheet(String name) throws IOException {
        OutlineRuler.Reading reading = tracesTheTruth(name, new GroundChoice.Sheet());
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(0.30);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(0.8);
    }

    @Test
    void tracesTheTruthOnAMat() throws IOException {
        OutlineRuler.Reading reading = tracesTheTruth("droppoint-mat-cm", new GroundChoice.Ruled(10));
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(0.22);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(0.6);
    }

    /** Where steel is as bright as what it lies on, nobody can say where it ends; but it must be said that it is so. */
    @ParameterizedTest
    @CsvSource({"utility-paper-ceiling, paper:a4", "wharncliffe-graph, ruled:5mm"})
    void ownsUpToWhatItHardlySees(String name, String ground) throws IOException {
        Path picture = PHOTOS.resolve(name + ".jpg");
        assumeTrue(Files.exists(picture), "the shared photos are not here: " + PHOTOS);
        JsonNode truth = truth(name);
        Trace trace = trace(picture, truth, GroundChoice.parse(ground));
        OutlineRuler.Reading reading = OutlineRuler.measure(
                trace.silhouette().outline().sampled(0.25), outline(truth.get("knife_outline")));
        assertThat(trace.unsure()).isNotEmpty();
        assertThat(trace.error().error95Mm()).as("claimed error").isGreaterThan(reading.p95Mm());
    }

    private static OutlineRuler.Reading tracesTheTruth(String name, GroundChoice ground) throws IOException {
        Path picture = PHOTOS.resolve(name + ".jpg");
        assumeTrue(Files.exists(picture), "the shared photos are not here: " + PHOTOS);
        JsonNode truth = truth(name);
        Trace trace = trace(picture, truth, ground);
        OutlineRuler.Reading reading = OutlineRuler.measure(
                trace.silhouette().outline().sampled(0.25), outline(truth.get("knife_outline")));
        assertThat(trace.silhouette().overallLengthMm())
                .isCloseTo(truth.get("overall_length").asDouble(), within(0.4));
        assertThat(trace.silhouette().bladeLengthMm())
                .isCloseTo(truth.get("blade_length").asDouble(), within(0.6));
        assertThat(trace.silhouette().spineOnLeft()).as("spine side").isTrue();
        assertThat(trace.seenFrom().camera().focalPx())
                .isCloseTo(truth.get("photo").get("focal_px").asDouble(), within(0.005 * 4543));
        assertThat(trace.error().error95Mm()).as("claimed error").isGreaterThan(reading.p95Mm() / 2);
        return reading;
    }

    private static JsonNode truth(String name) throws IOException {
        return new ObjectMapper()
                .readTree(PHOTOS.resolve(name + ".truth.json").toFile());
    }

    private static Trace trace(Path picture, JsonNode truth, GroundChoice ground) {
        return Tracer.trace(
                Photo.read(picture),
                new TraceSettings(
                        truth.get("handle_thickness").asDouble(),
                        truth.get("spine_thickness").asDouble(),
                        0,
                        OptionalDouble.empty(),
                        PrintScale.TRUE,
                        ground),
                Progress.NONE);
    }

    private static Polyline outline(JsonNode ring) {
        List<Point> points = new ArrayList<>();
        ring.forEach(p -> points.add(new Point(p.get(0).asDouble(), p.get(1).asDouble())));
        Polyline outline = Polyline.closed(points);
        return outline.signedAreaMm2() > 0 ? outline : outline.reversed();
    }
}
