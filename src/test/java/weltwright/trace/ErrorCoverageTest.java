package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import weltwright.image.Photo;

/**
 * Whether the error that the program claims is the error that it makes, on all pictures with known truth: the shared
 * photos, where they are beside the project, and our own scenes. It claims to cover 95 of 100 points.
 */
class ErrorCoverageTest {
    @Test
    void claimsNeitherLessNorMuchMoreThanItsErrors() throws IOException {
        List<TraceOutcome.Found> all = new ArrayList<>();
        SoftAssertions softly = new SoftAssertions();
        for (GroundTruthPhoto photo : Stream.concat(
                        GroundTruthPhoto.in(GroundTruthPhoto.KNIVES).stream(),
                        GroundTruthPhoto.in(GroundTruthPhoto.SCENES).stream())
                .toList()) {
            TraceOutcome.of(photo, Photo.read(photo.picture()), photo.ground())
                    .found()
                    .ifPresent(found -> {
                        all.add(found);
                        softly.assertThat(found.claimedMm())
                                .as("claimed for " + photo.name())
                                .isGreaterThan(found.reading().p95Mm() / 2);
                    });
        }
        softly.assertAll();
        double errors =
                all.stream().mapToDouble(f -> f.reading().distancesMm().length).sum();
        double covered = all.stream()
                .mapToDouble(f -> f.covered() * f.reading().distancesMm().length)
                .sum();
        assertThat(covered / errors).isBetween(0.90, 0.99);
    }
}
