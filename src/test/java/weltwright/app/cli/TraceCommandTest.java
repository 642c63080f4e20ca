package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.io.DirectoryListing;

/** Traces the sample photo of a drop point, whose true measures are those that it was made with. */
class TraceCommandTest {
    private static final Path SAMPLE = Path.of("sample-images/drop-point.jpg");
    private static final double TRUE_BLADE_MM = 96;
    private static final double TRUE_OVERALL_MM = 208;
    private static final String[] KNIFE = {"--handle-thickness", "19mm", "--spine-thickness", "3.5mm"};

    @TempDir
    Path folder;

    private Path output;

    @BeforeEach
    void nameTheOutput() {
        output = folder.resolve("knife.json");
    }

    @Test
    void writesTheKnifeForOtherPrograms() throws IOException {
        trace(SAMPLE, KNIFE).succeeds();

        JsonNode knife = new ObjectMapper().readTree(output.toFile());
        assertThat(knife.path("units").asText()).isEqualTo("mm");
        assertThat(knife.path("overall_length").asDouble()).isCloseTo(TRUE_OVERALL_MM, within(0.4));
        assertThat(knife.path("blade_length").asDouble()).isCloseTo(TRUE_BLADE_MM, within(2.0)); // the heel is proposed
        assertThat(knife.path("error95").asDouble()).isBetween(0.01, 1.0);
        assertThat(knife.path("error_parts").isArray()).isTrue();
        assertThat(knife.path("notes").isArray()).isTrue();
        JsonNode landmarks = knife.path("landmarks");
        assertThat(landmarks.path("spine_side").asText()).isEqualTo("left");
        List<Point> ring = new ArrayList<>();
        knife.path("outline").forEach(p -> ring.add(point(p)));
        Polyline outline = Polyline.closed(ring);
        assertThat(outline.signedAreaMm2())
                .as("counter-clockwise, seen from above")
                .isPositive();
        assertThat(ring.get(0)).isNotEqualTo(ring.get(ring.size() - 1));
        double[] stations = outline.stationsMm();
        for (int i = 1; i < stations.length; i++) {
            assertThat(stations[i] - stations[i - 1]).isBetween(0.0, 0.5);
        }
        for (String name : List.of("tip", "heel", "spine_start", "butt")) {
            Point at = point(landmarks.path(name));
            assertThat(ring.stream().mapToDouble(at::distance).min().orElseThrow())
                    .as(name)
                    .isLessThan(0.3);
        }
    }

    /**
     * The sample lies with its spine on the left, as above. Told otherwise, the same outline is taken the other way.
     */
    @Test
    void exchangesEdgeAndSpineByTheOption() throws IOException {
        String[] otherSide = {KNIFE[0], KNIFE[1], KNIFE[2], KNIFE[3], "--other-side"};
        assertThat(trace(SAMPLE, otherSide).succeeds().out()).doesNotContain("Look which side");

        JsonNode knife = new ObjectMapper().readTree(output.toFile());
        assertThat(knife.path("landmarks").path("spine_side").asText()).isEqualTo("right");
        assertThat(knife.path("landmarks").path("spine_side_sure").asDouble()).isEqualTo(1);
        assertThat(knife.path("overall_length").asDouble()).isCloseTo(TRUE_OVERALL_MM, within(0.4));
    }

    @Test
    void remindsOfAMissingHandleThickness() {
        assertThat(trace(SAMPLE).succeeds().out())
                .contains(
                        "taken to be 19 mm thick",
                        "--handle-thickness",
                        "taken to be 3.5 mm thick",
                        "--spine-thickness");
        assertThat(trace(SAMPLE, KNIFE).succeeds().out()).doesNotContain("taken to be");
    }

    @Test
    void refusesAPhotoWithoutASheet() throws IOException {
        Path blank = changed(photo -> new BufferedImage(1200, 900, BufferedImage.TYPE_INT_RGB));
        refuses(blank, "sheet");
    }

    @Test
    void refusesASheetThatIsTooMuchCovered() throws IOException {
        Path covered = changed(photo -> {
            Graphics2D g = photo.createGraphics();
            g.setColor(Color.GRAY);
            g.fillRect(720, 0, photo.getWidth(), photo.getHeight());
            g.dispose();
            return photo;
        });
        refuses(covered, "sheet");
    }

    @Test
    void refusesAKnifeThatRunsOutOfThePhoto() throws IOException {
        Path cut = changed(photo -> photo.getSubimage(0, 0, 1990, photo.getHeight()));
        refuses(cut, "knife");
    }

    private void refuses(Path photo, String word) throws IOException {
        trace(photo, "--focal-35mm", "26").fails(CommandLineApplication.USER_ERROR, word);
        assertThat(DirectoryListing.of(folder)).containsExactly(photo);
    }

    private CommandLineRun trace(Path photo, String... options) {
        List<Object> args = new ArrayList<>(List.of("trace", photo, "-o", output));
        args.addAll(List.of(options));
        return CommandLineRun.of(args.toArray());
    }

    private Path changed(UnaryOperator<BufferedImage> how) throws IOException {
        Path file = folder.resolve("changed.jpg");
        ImageIO.write(how.apply(ImageIO.read(SAMPLE.toFile())), "jpg", file.toFile());
        return file;
    }

    private static Point point(JsonNode pair) {
        return new Point(pair.path(0).asDouble(), pair.path(1).asDouble());
    }

    @Test
    void refusesAMarkThatIsNoPlace() {
        trace(SAMPLE, "--not-knife-at", "1200")
                .fails(CommandLineApplication.USER_ERROR, "\"1200\" is no place in the photo.");
        trace(SAMPLE, "--knife-at", "12,wide").fails(CommandLineApplication.USER_ERROR, "place in the photo");
    }
}
