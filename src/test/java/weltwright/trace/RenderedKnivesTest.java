package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.trace.ground.GroundChoice;

/**
 * Photos with known truth: rendered by a program that knows nothing of ours. The bounds are the errors measured plus a
 * fifth.
 */
class RenderedKnivesTest {
    @ParameterizedTest
    @CsvSource({
        "droppoint-sheet-window, sheet, 0.08, 0.16, 0.30",
        "leaf-sheet-letter, sheet, 0.52, 0.69, 0.21",
        "northern-sheet-lamp, sheet, 0.17, 0.99, 0.57",
        "droppoint-mat-cm, ruled:10mm, 0.10, 0.33, 0.20"
    })
    void tracesTheTruth(String name, String ground, double p95Mm, double greatestMm, double bladeMm)
            throws IOException {
        GroundTruthPhoto photo = GroundTruthPhoto.read(GroundTruthPhoto.KNIVES, name);
        Trace trace = photo.trace(GroundChoice.parse(ground));
        OutlineDistance.Reading reading = photo.measure(trace);
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(p95Mm);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(greatestMm);
        assertThat(trace.silhouette().overallLengthMm()).isCloseTo(photo.number("overall_length"), within(0.41));
        assertThat(trace.silhouette().bladeLengthMm()).isCloseTo(photo.number("blade_length"), within(bladeMm));
        assertThat(trace.silhouette().spineOnLeft()).as("spine side").isTrue();
        double focalPx = photo.truth().get("photo").get("focal_px").asDouble();
        assertThat(trace.seenFrom().camera().focalPx()).isCloseTo(focalPx, within(0.005 * focalPx));
        assertThat(trace.error().error95Mm()).as("claimed error").isGreaterThan(reading.p95Mm() / 2);
    }

    /** Where steel is as bright as what it lies on, nobody can say where it ends; but it must be said that it is so. */
    @ParameterizedTest
    @CsvSource({"utility-paper-ceiling, paper:a4", "wharncliffe-graph, ruled:5mm"})
    void ownsUpToWhatItHardlySees(String name, String ground) throws IOException {
        GroundTruthPhoto photo = GroundTruthPhoto.read(GroundTruthPhoto.KNIVES, name);
        Trace trace = photo.trace(GroundChoice.parse(ground));
        assertThat(trace.unsure()).isNotEmpty();
        assertThat(trace.error().error95Mm())
                .as("claimed error")
                .isGreaterThan(photo.measure(trace).p95Mm());
    }
}
