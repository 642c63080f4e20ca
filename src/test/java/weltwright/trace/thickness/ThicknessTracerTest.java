package weltwright.trace.thickness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.image.Photo;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.StandingPose;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.GroundTruthPhoto;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.PrintScale;

/**
 * Rendered photos of knives that stand upright between blocks, against the thickness of the bodies that were rendered
 * (src/test/scenes/standing.py). The bounds are the errors measured plus a fifth.
 */
class ThicknessTracerTest {
    private static final Path STANDING = Path.of("src", "test", "resources", "standing");

    /** Not judged: the tip, the butt, and the step from handle to blade. */
    private static final double TIP_MM = 4;

    private static final double BUTT_MM = 12;
    private static final double HEEL_MM = 5;

    @ParameterizedTest
    @CsvSource({"hunter-on-spine, 0.30, 0.45", "drop-on-edge, 0.32, 0.57"})
    void measuresHowThickAStandingKnifeIs(String name, double bladeMm, double handleMm) throws IOException {
        GroundTruthPhoto photo = GroundTruthPhoto.read(STANDING, name);
        Knife knife = knife(photo);
        ThicknessProfile profile = trace(photo, knife);
        Knife measured = knife.withThickness(profile);
        double tip = knife.landmarks().tip().x();
        double butt = knife.landmarks().butt().x();
        for (JsonNode station : photo.truth().get("thickness_along")) {
            double x = station.get(0).asDouble();
            if (x < tip - TIP_MM && x > butt + BUTT_MM && Math.abs(x) > HEEL_MM) {
                assertThat(Math.abs(measured.sectionAt(x).thicknessMm()
                                - station.get(1).asDouble()))
                        .as("%s, %.0f mm before the heel, of %s", name, x, profile)
                        .isLessThan(x > 0 ? bladeMm : handleMm);
            }
        }
    }

    /** A knife that lies shows its width and not its thickness: no thickness is better than that one. */
    @Test
    void refusesAKnifeThatLies() throws IOException {
        Knife knife = knife(GroundTruthPhoto.read(STANDING, "hunter-on-spine"));
        GroundTruthPhoto lying = GroundTruthPhoto.read(GroundTruthPhoto.SCENES, "clip-sheet-a4");

        assertThatThrownBy(() -> trace(lying, knife)).isInstanceOf(UserFacingException.class);
    }

    private static ThicknessProfile trace(GroundTruthPhoto photo, Knife knife) {
        TraceSettings settings = new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE, photo.ground());
        String foot = photo.truth().path("standing_on").asText("spine");
        return ThicknessTracer.trace(
                Photo.read(photo.picture()),
                settings,
                knife,
                foot.equals("edge") ? StandingPose.Foot.EDGE : StandingPose.Foot.SPINE,
                ProgressListener.NONE);
    }

    private static Knife knife(GroundTruthPhoto photo) {
        Polyline outline = photo.outline();
        Polyline open = outline.points()
                        .get(0)
                        .equals(outline.points().get(outline.points().size() - 1))
                ? Polyline.closed(outline.points().subList(1, outline.points().size()))
                : outline;
        Comparator<Point> byX = Comparator.comparingDouble(Point::x);
        double[] heel = StreamSupport.stream(photo.truth().get("blade_outline").spliterator(), false)
                .filter(p -> Math.abs(p.get(0).asDouble()) < 1)
                .mapToDouble(p -> p.get(1).asDouble())
                .sorted()
                .toArray();
        Landmarks at = new Landmarks(
                open.points().stream().max(byX).orElseThrow(),
                new Point(0, heel[0]),
                new Point(0, heel[heel.length - 1]),
                open.points().stream().min(byX).orElseThrow());
        return new Knife(
                Outline.polygon(open.points()),
                at,
                photo.number("spine_thickness"),
                photo.number("handle_thickness"),
                CrossSectionShape.usual(0.4).withHandleExponent(photo.number("handle_section_exponent")));
    }
}
