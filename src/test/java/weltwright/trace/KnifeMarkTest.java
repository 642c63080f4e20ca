package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.trace.capture.KnifeMark;

/**
 * A knife that lies across a pencil, rendered by a program that knows nothing of ours, with its true outline. Bounds
 * are the errors measured plus a fifth; without the mark the photo is refused.
 */
class KnifeMarkTest {
    @Test
    void oneMarkTellsAPencilFromTheKnife() throws IOException {
        GroundTruthPhoto known =
                GroundTruthPhoto.read(Path.of("src", "test", "resources", "clutter"), "pencil-sheet-a3");
        KnifeMark onPencil = new KnifeMark(new Point(1345, 1129), false);
        Trace trace = Tracer.trace(
                Photo.read(known.picture()),
                known.settings(known.ground()).withMarks(List.of(onPencil)),
                ProgressListener.NONE);
        OutlineDistance.Reading reading = known.measure(trace);
        assertThat(reading.p95Mm()).as("95th percentile").isLessThan(0.18);
        assertThat(reading.greatestMm()).as("greatest").isLessThan(0.96);
        assertThat(trace.error().error95Mm()).as("claimed").isGreaterThan(reading.p95Mm());
    }
}
