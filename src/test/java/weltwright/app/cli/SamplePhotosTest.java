package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.io.DirectoryListing;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** Makes patterns from the sample photos as in the README, and compares with the true measures of their knives. */
class SamplePhotosTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"drop-point, Anouk, FOLDED, RIGHT, 96, 208", "leaf-blade, Tomas, PANELS, LEFT, 122, 230"})
    void fromAPhotoToAPattern(
            String sample, String customer, SheathKind kind, DrawHand hand, double bladeMm, double overallMm)
            throws IOException {
        CommandLineRun.of("make", "@sample-images/" + sample + ".args", "-o", folder)
                .succeeds();

        Path file = folder.resolve(sample + ".wwj");
        assertThat(DirectoryListing.of(folder))
                .containsExactlyInAnyOrder(
                        file,
                        folder.resolve(sample + "-pattern.pdf"),
                        folder.resolve(sample + "-pattern.svg"),
                        folder.resolve(sample + "-pattern.dxf"));
        Job job = JobFile.read(file);
        assertThat(job.customer()).isEqualTo(customer);
        assertThat(job.spec())
                .extracting(SheathSpec::kind, spec -> spec.carry().hand())
                .containsExactly(kind, hand);
        assertThat(job.silhouette().orElseThrow().overallLengthMm()).isCloseTo(overallMm, within(0.4));
        assertThat(job.silhouette().orElseThrow().bladeLengthMm()).isCloseTo(bladeMm, within(2.0)); // heel is proposed
        assertThat(job.pattern().seams()).isNotEmpty();
    }

    @Test
    void makesTheSamePatternFromTheSavedJob() throws IOException {
        CommandLineRun.of("make", "@sample-images/leaf-blade.args", "-o", folder)
                .succeeds();
        Path again = folder.resolve("again");
        CommandLineRun.of("make", folder.resolve("leaf-blade.wwj"), "-o", again).succeeds();
        assertThat(again.resolve("leaf-blade-pattern.svg"))
                .hasSameTextualContentAs(folder.resolve("leaf-blade-pattern.svg"));
    }
}
