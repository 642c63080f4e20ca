package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;

/** Tests the options for the ground. */
class GroundOptionTest {
    private static final Path SAMPLE = Path.of("sample-images/drop-point.jpg");
    private static final Path ON_A_MAT = Path.of("src/test/resources/knives/droppoint-mat-cm.jpg");

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
        assertThat(given("--ground", "find")).isEqualTo(new GroundChoice.Any());
    }

    @Test
    void findsTheGroundWithoutTheOption() {
        assertThat(given()).isEqualTo(new GroundChoice.Any());
    }

    /** One unit behind both sides is that of both; 8 by 11 in is 203.2 by 279.4 mm. */
    @Test
    void readsARectangleAndItsCorners() {
        List<Point> corners =
                List.of(new Point(310, 402), new Point(2811.5, 390), new Point(2850, 3900), new Point(280, 3911));
        String said = "310,402 2811.5,390  2850,3900 280,3911";
        assertThat(given("--ground", "rectangle:210x297mm", "--corners", said))
                .isEqualTo(new GroundChoice.Rectangle(210, 297, corners));
        assertThat(given("--ground", "Rectangle: 8 x 11 in", "--corners", said))
                .isEqualTo(new GroundChoice.Rectangle(203.2, 279.4, corners));
        assertThat(given("--ground", "rectangle:50cm x 30cm", "--corners", said))
                .isEqualTo(new GroundChoice.Rectangle(500, 300, corners));
    }

    /** Corners corrected alone: the size is that of before. */
    @Test
    void takesOtherCornersOfTheSameRectangle() {
        TraceSettings before = over(settings(), "--ground", "rectangle:210x297mm", "--corners", "0,0 9,0 9,9 0,9");
        assertThat(over(before, "--corners", "1,0 9,0 9,9 0,9").ground())
                .isEqualTo(new GroundChoice.Rectangle(
                        210, 297, List.of(new Point(1, 0), new Point(9, 0), new Point(9, 9), new Point(0, 9))));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rectangle:210x297mm | | corners",
                "rectangle:210 | 0,0 9,0 9,9 0,9 | width",
                "rectangle:2x3mm | 0,0 9,0 9,9 0,9 | side of the rectangle",
                "rectangle:210x297mm | 0,0 9,0 9,9 | four",
                "rectangle:210x297mm | 0,0 9,0 0,9 9,9 | walk round",
                "rectangle:210x297mm | 0,0 9,0 9,9 left | left",
                "sheet | 0,0 9,0 9,9 0,9 | rectangle"
            })
    void refusesInvalidRectangles(String ground, String corners, String word) {
        List<String> args = new ArrayList<>(List.of("--ground", ground));
        if (corners != null) {
            args.addAll(List.of("--corners", corners));
        }
        assertThatThrownBy(() -> given(args.toArray(String[]::new)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(word);
    }

    /** The pitch of lines is never guessed. */
    @Test
    void asksForThePitchOfARuledGround() {
        Path onAMat = Path.of("src/test/resources/scenes/clip-mat-black.jpg");
        CommandLineRun.of("trace", onAMat, "-o", folder.resolve("knife.json"))
                .fails(CommandLineApplication.USER_ERROR, "ruled:10mm");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void keepsTheGroundOfTheJobWithoutTheOption() {
        TraceSettings onPaper = over(settings(), "--ground", "paper:a4");
        assertThat(over(onPaper, "--tip-drop", "1mm").ground()).isEqualTo(GroundChoice.Paper.A4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"lawn", "ruled", "ruled:", "ruled:1mm", "ruled:1km", "paper:a9", ""})
    void refusesAGroundThatNothingCanBeMeasuredOn(String ground) {
        CommandLineRun.of("trace", SAMPLE, "--ground", ground, "-o", folder.resolve("knife.json"))
                .fails(
                        CommandLineApplication.USER_ERROR,
                        ground.startsWith("ruled:") ? "distance of the ground's lines" : "ground");
    }

    /** The mat has lines 10 mm apart; the photo's truth file says 208 mm over all. */
    @Test
    void storesTheGroundInTheJob() {
        CommandLineRun.of("make", ON_A_MAT, "--ground", "ruled:10mm", "--handle-thickness", "19mm", "-o", folder)
                .succeeds();
        Job job = JobFile.read(folder.resolve("droppoint-mat-cm.wwj"));
        assertThat(job.settings().ground()).isEqualTo(new GroundChoice.Ruled(10));
        assertThat(job.silhouette().orElseThrow().overallLengthMm()).isCloseTo(208, within(0.6));
    }

    private static GroundChoice given(String... options) {
        return over(settings(), options).ground();
    }

    private static TraceSettings over(TraceSettings settings, String... options) {
        return CommandLine.populateCommand(new KnifeOptions(), options).applyTo(settings);
    }

    private static TraceSettings settings() {
        return Job.begin(LocalDate.of(2024, 5, 6)).settings();
    }
}
