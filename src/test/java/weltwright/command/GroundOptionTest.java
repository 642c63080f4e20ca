package weltwright.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import weltwright.ground.GroundChoice;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.trace.TraceSettings;

/** What the knife lay on, said on the command line. */
class GroundOptionTest {
    private static final Path SAMPLE = Path.of("sample-images/drop-point.jpg");
    private static final Path ON_A_MAT = Path.of("../shared/photos/droppoint-mat-cm.jpg");

    @TempDir
    Path folder;

    @Test
    void readsEveryKindOfGround() {
        assertThat(given("--ground", "sheet")).isEqualTo(new GroundChoice.Sheet());
        assertThat(given("--ground", "ruled:10mm")).isEqualTo(new GroundChoice.Ruled(10));
        assertThat(given("--ground", "ruled:1in")).isEqualTo(new GroundChoice.Ruled(25.4));
        assertThat(given("--ground=ruled:1/2 in")).isEqualTo(new GroundChoice.Ruled(12.7));
        assertThat(given("--ground", "paper:a4")).isEqualTo(GroundChoice.Paper.A4);
        assertThat(given("--ground", "Paper:Letter")).isEqualTo(GroundChoice.Paper.LETTER);
    }

    @Test
    void staysAsItWasWhereNothingIsSaid() {
        TraceSettings onPaper = over(settings(), "--ground", "paper:a4");
        assertThat(over(onPaper, "--tip-drop", "1mm").ground()).isEqualTo(GroundChoice.Paper.A4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"lawn", "ruled", "ruled:", "ruled:1mm", "ruled:1km", "paper:a9", ""})
    void refusesAGroundThatNothingCanBeMeasuredOn(String ground) {
        Run.of("trace", SAMPLE, "--ground", ground, "-o", folder.resolve("knife.json"))
                .fails(Commands.TROUBLE, ground.startsWith("ruled:") ? "distance of the ground's lines" : "ground");
    }

    /** The mat has lines 10 mm apart; the photo's truth file says 208 mm over all. */
    @Test
    void theJobKeepsTheGroundThatItsKnifeWasMeasuredOn() {
        assumeTrue(Files.exists(ON_A_MAT), "the shared photos are not here: " + ON_A_MAT);
        Run.of("make", ON_A_MAT, "--ground", "ruled:10mm", "--handle-thickness", "19mm", "-o", folder)
                .succeeds();
        Job job = JobFile.read(folder.resolve("droppoint-mat-cm.wwj"));
        assertThat(job.settings().ground()).isEqualTo(new GroundChoice.Ruled(10));
        assertThat(job.silhouette().orElseThrow().overallLengthMm()).isCloseTo(208, within(0.6));
    }

    private static GroundChoice given(String... options) {
        return over(settings(), options).ground();
    }

    private static TraceSettings over(TraceSettings settings, String... options) {
        return CommandLine.populateCommand(new KnifeOptions(), options).over(settings);
    }

    private static TraceSettings settings() {
        return Job.begin(LocalDate.of(2024, 5, 6)).settings();
    }
}
